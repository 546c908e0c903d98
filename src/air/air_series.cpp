#include "tackfree/air/air_series.hpp"

#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace tackfree {

namespace {

using Node = AirSeries::Node;

constexpr Minutes one_hour{60};
constexpr Minutes one_day{24 * 60};
constexpr int mean_days = 7;
constexpr int hours_in_day = 24;
/// Rows further apart than this are not joined. Source: assumed; a front can pass in that time.
constexpr Minutes longest_bridge{3 * 60};

Node node_of(const AirRow& row) {
  const Pressure vapour = row.dew_point ? saturation_pressure(*row.dew_point)
                                        : vapour_pressure(row.temperature, row.humidity.value());
  return {row.at, {row.temperature, vapour}};
}

bool earlier(Instant at, const Node& node) { return at < node.at; }

/// The air at `at`, unless it lies outside `nodes` or in a gap that is too long to bridge.
std::optional<AirState> known_state(const std::vector<Node>& nodes, Instant at) {
  const auto after = std::upper_bound(nodes.begin(), nodes.end(), at, earlier);
  if (after == nodes.begin()) return std::nullopt;
  const auto before = std::prev(after);
  if (before->at == at) return before->state;
  if (after == nodes.end() || after->at - before->at > longest_bridge) return std::nullopt;
  return state_between(*before, *after, at);
}

/// The mean of the states at `at` and the same clock time of the days before, at most seven in all.
std::optional<AirState> mean_over_days(const std::vector<Node>& nodes, Instant at) {
  int count = 0;
  TemperatureDifference temperature;
  Pressure vapour;
  for (int day = 0; day < mean_days; ++day) {
    const auto state = known_state(nodes, at - day * one_day);
    if (!state) continue;
    ++count;
    temperature += state->temperature - celsius(0);
    vapour += state->vapour;
  }
  if (count == 0) return std::nullopt;
  return AirState{celsius(0) + temperature / count, vapour / count};
}

/// The mean day of the rows' last seven days, hour by hour after the last row; a day is 24 hours of
/// UTC, so the clock changes do not shift it. Nothing when some hour of the day has no row.
std::optional<std::array<AirState, hours_in_day>> typical_day(const std::vector<Node>& nodes) {
  std::array<AirState, hours_in_day> day{};
  for (int hour = 0; hour < hours_in_day; ++hour) {
    const auto mean = mean_over_days(nodes, nodes.back().at - one_day + (hour + 1) * one_hour);
    if (!mean) return std::nullopt;
    day[static_cast<std::size_t>(hour)] = *mean;
  }
  return day;
}

/// Repeats the typical day after the last of `nodes` until `end` is passed.
void append_typical(std::vector<Node>& nodes, const std::array<AirState, hours_in_day>& day,
                    Instant end) {
  const Instant last = nodes.back().at;
  for (std::size_t hour = 0; nodes.back().at < end; ++hour)
    nodes.push_back({last + static_cast<int>(hour + 1) * one_hour, day[hour % hours_in_day]});
}

/// What lies in `span`, with a node at each of its ends.
std::vector<Node> cut_to(const std::vector<Node>& nodes, Interval span) {
  std::vector<Node> inside{{span.begin, *known_state(nodes, span.begin)}};
  for (const Node& node : nodes)
    if (node.at > span.begin && node.at < span.end) inside.push_back(node);
  inside.push_back({span.end, *known_state(nodes, span.end)});
  return inside;
}

/// Collects what is wrong with the rows, and the gaps that are bridged.
class RowsCheck {
 public:
  RowsCheck(const AirRows& rows, Interval span, Problems& problems)
      : rows_(rows), span_(span), problems_(problems), known_problems_(problems.size()) {}

  bool passed() const { return problems_.size() == known_problems_; }

  void check_ends() {
    if (rows_.rows.empty()) {
      add(0, "the file has no rows", "hourly rows from before the plan's start");
      return;
    }
    const AirRow& first = rows_.rows.front();
    const AirRow& last = rows_.rows.back();
    if (first.at > span_.begin)
      add(first.line, fmt::format("first row at {}", iso_utc(first.at)),
          fmt::format("rows that begin at or before the plan's start, {}", iso_utc(span_.begin)),
          "add earlier rows or start the plan later");
    if (last.at < span_.begin)
      add(last.line, fmt::format("last row at {}", iso_utc(last.at)),
          fmt::format("rows that reach the plan's start, {}", iso_utc(span_.begin)),
          "add later rows, start the plan earlier, or replay the rows under another year");
  }

  std::vector<AirSeries::Bridged> check_gaps() {
    std::vector<AirSeries::Bridged> bridged;
    for (std::size_t i = 1; i < rows_.rows.size(); ++i) {
      const Interval gap{rows_.rows[i - 1].at, rows_.rows[i].at};
      const int line = rows_.rows[i].line;
      if (gap.length() <= Minutes(0))
        add(line, iso_utc(gap.end),
            fmt::format("a time after the row before, {}", iso_utc(gap.begin)),
            "put the rows in order of time, one for each time");
      else if (gap.length() > one_hour && gap.begin < span_.end && gap.end > span_.begin) {
        if (gap.length() <= longest_bridge)
          bridged.push_back({gap});
        else
          add(line, fmt::format("no row between {} and {}", iso_utc(gap.begin), iso_utc(gap.end)),
              "rows at most three hours apart while the plan runs",
              "fill in the missing rows or start the plan after the gap");
      }
    }
    return bridged;
  }

  void no_full_day() {
    add(rows_.rows.back().line,
        fmt::format("rows end at {}, before the plan's horizon", iso_utc(rows_.rows.back().at)),
        "at least one full day of rows, to be repeated after the last one",
        "add rows for the last 24 hours, or shorten the horizon");
  }

 private:
  void add(int line, std::string found, std::string wanted, std::string hint = {}) {
    problems_.push_back({.file = rows_.file,
                         .line = line,
                         .found = std::move(found),
                         .wanted = std::move(wanted),
                         .hint = std::move(hint)});
  }

  const AirRows& rows_;
  Interval span_;
  Problems& problems_;
  std::size_t known_problems_;
};

}  // namespace

AirState state_between(const Node& a, const Node& b, Instant at) {
  if (at <= a.at) return a.state;
  if (at >= b.at) return b.state;
  const double share = to_duration(at - a.at) / to_duration(b.at - a.at);
  return {a.state.temperature + (b.state.temperature - a.state.temperature) * share,
          a.state.vapour + (b.state.vapour - a.state.vapour) * share};
}

AirState AirSeries::at(Instant at) const {
  const auto after = std::upper_bound(nodes_.begin(), nodes_.end(), at, earlier);
  if (after == nodes_.begin()) return nodes_.front().state;
  if (after == nodes_.end()) return nodes_.back().state;
  return state_between(*std::prev(after), *after, at);
}

Interval AirSeries::covers() const { return {nodes_.front().at, nodes_.back().at}; }

std::optional<AirSeries> AirSeries::over(const AirRecord& record, Interval span,
                                         Problems& problems) {
  AirSeries series;
  if (const auto* constant = std::get_if<ConstantAir>(&record)) {
    const AirState state{constant->temperature,
                         vapour_pressure(constant->temperature, constant->humidity)};
    series.nodes_ = {{span.begin, state}, {span.end, state}};
    return series;
  }
  const auto& rows = std::get<AirRows>(record);
  RowsCheck check(rows, span, problems);
  check.check_ends();
  series.bridged_ = check.check_gaps();
  if (!check.passed()) return std::nullopt;

  std::vector<Node> nodes;
  nodes.reserve(rows.rows.size());
  for (const AirRow& row : rows.rows) nodes.push_back(node_of(row));
  if (nodes.back().at < span.end) {
    const auto day = typical_day(nodes);
    if (!day) {
      check.no_full_day();
      return std::nullopt;
    }
    series.typical_from_ = nodes.back().at;
    append_typical(nodes, *day, span.end);
  }
  series.nodes_ = cut_to(nodes, span);
  return series;
}

}  // namespace tackfree
