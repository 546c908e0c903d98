#include "tackfree/input/label_rows_reader.hpp"

#include "tackfree/input/figure_reader.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr NumberRange label_temperature_range{-10, 60, "C"};

/// A point with the row it stands in.
struct ReadPoint {
  LabelPoint point;
  JsonCursor* row;
};
using PointsByStage = std::array<std::vector<ReadPoint>, stage_count>;

void read_row(JsonCursor& row, PointsByStage& points) {
  const auto at = read_temperature(row, needed("temp"), label_temperature_range);
  for (const StageKey& stage : stage_keys) {
    const NumberRange range =
        stage.in_days ? NumberRange{0.1, 200, "days"} : NumberRange{0.05, 1000, "h"};
    const auto number = row.number(stage.key, range);
    if (number && at)
      points[index_of(stage.stage)].push_back(
          {{*at, stage.in_days ? days(*number) : hours(*number)}, &row});
  }
  row.refuse_unknown();
}

/// Coldest first; false, with a Problem at the row, when the rows contradict each other.
bool put_in_order(std::vector<ReadPoint>& points, std::string_view key) {
  std::stable_sort(points.begin(), points.end(),
                   [](const ReadPoint& a, const ReadPoint& b) { return a.point.at < b.point.at; });
  for (std::size_t i = 1; i < points.size(); ++i) {
    const LabelPoint& colder = points[i - 1].point;
    const LabelPoint& warmer = points[i].point;
    if (colder.at == warmer.at) {
      points[i].row->report(key,
                            fmt::format("wanted one row for {:.4g} C", warmer.at.in_celsius()));
      return false;
    }
    if (colder.after < warmer.after) {
      points[i - 1].row->report(
          key,
          fmt::format("wanted no fewer hours at {:.4g} C than at {:.4g} C: a film dries slower in "
                      "the cold",
                      colder.at.in_celsius(), warmer.at.in_celsius()),
          "look at the label again; were two columns exchanged?");
      return false;
    }
  }
  return true;
}

}  // namespace

void read_label_rows(JsonCursor& label, Coating& coating, StagesGiven& given) {
  if (!label.has("at_temperatures")) return;
  std::vector<JsonCursor> rows = label.objects("at_temperatures");
  PointsByStage points;
  for (JsonCursor& row : rows) read_row(row, points);
  for (const StageKey& stage : stage_keys) {
    const std::size_t index = index_of(stage.stage);
    std::vector<ReadPoint>& of_stage = points[index];
    if (of_stage.empty()) continue;
    if (label.has(stage.key))
      label.report(stage.key, "wanted one time or rows in at_temperatures, not both");
    if (of_stage.size() < 2) {
      of_stage[0].row->report(stage.key, "wanted at least two rows with this time");
      continue;
    }
    if (!put_in_order(of_stage, stage.key)) continue;
    coating.label_points[index].clear();
    for (const ReadPoint& read : of_stage) coating.label_points[index].push_back(read.point);
    const auto& kept = coating.label_points[index];
    const auto nearest =
        std::min_element(kept.begin(), kept.end(), [&](const LabelPoint& a, const LabelPoint& b) {
          const auto distance = [&](const LabelPoint& p) {
            return std::abs((p.at - coating.label_temperature).in(kelvins));
          };
          return distance(a) < distance(b);
        });
    coating.label_after[index] = {nearest->after, Origin::label, {}};
    coating.label_least[index].reset();
    given[index] = true;
  }
}

}  // namespace tackfree
