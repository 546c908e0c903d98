#include "tackfree/report/text_areas.hpp"

#include <array>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// What one row of the parts list, or all of them, have in each column.
using Sums = std::vector<Area>;

/// A table of the parts with a column for each word that occurs; `column` says which column a
/// surface counts in.
template <std::size_t N, class Column>
Table area_table(const Plan& plan, const Figures& figures,
                 const std::array<std::string_view, N>& words, Column column) {
  std::vector<Sums> rows;
  Sums all(N);
  for (std::size_t part = 0; part < plan.job.parts.size(); ++part) {
    Sums& row = rows.emplace_back(N);
    for (const Surface& surface : surfaces_of(plan.takeoff, part)) {
      row.at(column(surface)) += surface.area;
      all.at(column(surface)) += surface.area;
    }
  }
  Table table{.head = {fmt::format("part ({})", figures.area(Area()).unit)},
              .total = {"all parts"}};
  const auto fill = [&](std::vector<std::string>& cells, const Sums& sums) {
    Area sum;
    for (std::size_t i = 0; i < N; ++i) {
      sum += sums[i];
      if (all[i] > Area()) cells.push_back(sums[i] > Area() ? figures.area(sums[i]).number : "-");
    }
    cells.push_back(sum > Area() ? figures.area(sum).number : "-");
  };
  for (std::size_t i = 0; i < N; ++i)
    if (all[i] > Area()) table.head.emplace_back(words[i]);
  table.head.emplace_back("all");
  fill(table.total, all);
  for (std::size_t part = 0; part < rows.size(); ++part) {
    table.rows.push_back(
        {fmt::format("{} x {}", plan.job.parts[part].quantity, plan.job.parts[part].name)});
    fill(table.rows.back(), rows[part]);
  }
  return table;
}

}  // namespace

void write_areas(Page& page, const Plan& plan, const Figures& figures) {
  if (plan.takeoff.surfaces.empty()) return;
  page.heading("Areas to coat");
  page.table(area_table(plan, figures, grain_titles,
                        [](const Surface& s) { return static_cast<std::size_t>(s.grain); }));
  for (const Masking& masking : plan.takeoff.masking)
    page.line(2, fmt::format("Masked: {} of tape on {}", figures.length(masking.tape).text(),
                             plan.job.parts.at(masking.part).name));
}

void write_areas_by_side(Page& page, const Plan& plan, const Figures& figures) {
  constexpr std::array<std::string_view, all_faces.size()> words{
      "top", "bottom", "front", "back", "left", "right", "side", "inside"};
  if (plan.takeoff.surfaces.empty()) return;
  page.heading("The same by side");
  page.table(area_table(plan, figures, words,
                        [](const Surface& s) { return static_cast<std::size_t>(s.face); }));
}

}  // namespace tackfree
