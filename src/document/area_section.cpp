#include "tackfree/document/area_section.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// What one row of the parts list, or all of them, have in each column.
using Sums = std::vector<Area>;

/// A table of the parts with a column for each word that occurs; `column` says which columns a
/// surface counts in. The last column is the sum over all surfaces.
template <std::size_t N, class Columns>
Table area_table(const Job& job, const SurfaceTakeoff& takeoff, const Figures& figures,
                 const std::array<std::string_view, N>& words, Columns columns) {
  std::vector<Sums> rows;
  Sums all(N + 1);
  for (std::size_t part = 0; part < job.parts.size(); ++part) {
    Sums& row = rows.emplace_back(N + 1);
    for (const Surface& surface : surfaces_of(takeoff, part)) {
      std::vector<std::size_t> counted = columns(surface);
      counted.push_back(N);
      for (const std::size_t i : counted) {
        row.at(i) += surface.area;
        all.at(i) += surface.area;
      }
    }
  }
  Table table{.head = {fmt::format("part ({})", figures.area(Area()).unit)},
              .total = {"all parts"}};
  const auto fill = [&](std::vector<std::string>& cells, const Sums& sums) {
    for (std::size_t i = 0; i <= N; ++i)
      if (i == N || all[i] > Area())
        cells.push_back(sums[i] > Area() ? figures.area(sums[i]).number : "-");
  };
  for (std::size_t i = 0; i < N; ++i)
    if (all[i] > Area()) table.head.emplace_back(words[i]);
  table.head.emplace_back("all");
  fill(table.total, all);
  for (std::size_t part = 0; part < rows.size(); ++part) {
    table.rows.push_back({fmt::format("{} x {}", job.parts[part].quantity, job.parts[part].name)});
    fill(table.rows.back(), rows[part]);
  }
  return table;
}

/// By grain, and where the page has room by the sides that are coated one after the other.
Table table_by_grain(const Job& job, const SurfaceTakeoff& takeoff, const Figures& figures,
                     bool with_sides) {
  std::array<std::string_view, grain_count + 2> words{};
  std::ranges::copy(grain_titles, words.begin());
  words.at(grain_count) = "back";
  words.at(grain_count + 1) = "show side";
  return area_table(job, takeoff, figures, words, [with_sides](const Surface& surface) {
    std::vector<std::size_t> columns{static_cast<std::size_t>(surface.grain)};
    if (with_sides) columns.push_back(grain_count + (surface.side == Side::back ? 0 : 1));
    return columns;
  });
}

}  // namespace

void write_areas(Page& page, const Job& job, const SurfaceTakeoff& takeoff,
                 const Figures& figures) {
  if (takeoff.surfaces.empty()) return;
  page.heading("Areas to coat");
  constexpr std::size_t wide_page = 110;
  page.table(table_by_grain(job, takeoff, figures, page.columns() >= wide_page));
  for (const Masking& masking : takeoff.masking)
    page.line(2, fmt::format("Masked: {} of tape on {}", figures.length(masking.tape).text(),
                             job.parts.at(masking.part).name));
}

void write_areas_by_side(Page& page, const Job& job, const SurfaceTakeoff& takeoff,
                         const Figures& figures) {
  constexpr std::array<std::string_view, all_faces.size()> words{
      "top", "bottom", "front", "back", "left", "right", "side", "inside"};
  if (takeoff.surfaces.empty()) return;
  page.heading("The same by side");
  page.table(area_table(job, takeoff, figures, words, [](const Surface& s) {
    return std::vector{static_cast<std::size_t>(s.face)};
  }));
}

}  // namespace tackfree
