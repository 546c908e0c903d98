#include "tackfree/air/joined_air.hpp"

#include "tackfree/air/daily_profile.hpp"
#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr int mean_days = 7;
constexpr int hours_of_day = 24;
/// Rows further apart than this are not joined. Source: assumed; a front can pass in that time.
constexpr Minutes longest_bridge{3 * 60};

AirNode node_of(const AirRow& row) {
  const Pressure vapour = row.dew_point ? saturation_pressure(*row.dew_point)
                                        : vapour_pressure(row.temperature, row.humidity.value());
  return {row.at, {row.temperature, vapour}};
}

bool before_node(Instant at, const AirNode& node) { return at < node.at; }

/// The air at `at`, unless it lies outside `nodes` or in a gap that is too long to bridge.
std::optional<AirState> known_state(const std::vector<AirNode>& nodes, Instant at) {
  const auto after = std::upper_bound(nodes.begin(), nodes.end(), at, before_node);
  if (after == nodes.begin()) return std::nullopt;
  const auto before = std::prev(after);
  if (before->at == at) return before->state;
  if (after == nodes.end() || after->at - before->at > longest_bridge) return std::nullopt;
  return state_between(*before, *after, at);
}

/// The mean of the states at `at` and the same clock time of the days before, at most seven in all.
std::optional<AirState> mean_over_days(const std::vector<AirNode>& nodes, Instant at) {
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
std::optional<std::array<AirState, hours_of_day>> typical_day(const std::vector<AirNode>& nodes) {
  std::array<AirState, hours_of_day> day{};
  for (int hour = 0; hour < hours_of_day; ++hour) {
    const auto mean = mean_over_days(nodes, nodes.back().at - one_day + (hour + 1) * one_hour);
    if (!mean) return std::nullopt;
    day[static_cast<std::size_t>(hour)] = *mean;
  }
  return day;
}

/// Repeats the typical day after the last of `nodes` until `end` is passed.
void append_typical(std::vector<AirNode>& nodes, const std::array<AirState, hours_of_day>& day,
                    Instant end) {
  const Instant last = nodes.back().at;
  for (std::size_t hour = 0; nodes.back().at < end; ++hour)
    nodes.push_back({last + static_cast<int>(hour + 1) * one_hour, day[hour % hours_of_day]});
}

/// Collects what is wrong with the rows, and the gaps that are bridged.
class RowsCheck {
 public:
  RowsCheck(const AirRows& rows, Interval span, Problems& problems)
      : rows_(rows), span_(span), problems_(problems), known_problems_(problems.size()) {}

  bool passed() const { return problems_.size() == known_problems_; }

  /// Rows that stand alone must begin before the plan does and reach its start; the first of
  /// several sources must begin before it, and the last one reach it.
  void check_ends(bool is_first, bool is_last) {
    if (rows_.rows.empty()) {
      add(0, "the file has no rows", "hourly rows from before the plan's start");
      return;
    }
    const AirRow& first = rows_.rows.front();
    const AirRow& last = rows_.rows.back();
    if (is_first && first.at > span_.begin)
      add(first.line, fmt::format("first row at {}", iso_utc(first.at)),
          fmt::format("rows that begin at or before the plan's start, {}", iso_utc(span_.begin)),
          "add earlier rows or start the plan later");
    if (is_last && last.at < span_.begin)
      add(last.line, fmt::format("last row at {}", iso_utc(last.at)),
          fmt::format("rows that reach the plan's start, {}", iso_utc(span_.begin)),
          "add later rows, start the plan earlier, or replay the rows under another year");
  }

  std::vector<BridgedGap> check_gaps() {
    std::vector<BridgedGap> bridged;
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

/// Puts sources one after another.
class Joining {
 public:
  Joining(const AirMix& mix, Interval span, Problems& problems)
      : mix_(mix), span_(span), problems_(problems), known_problems_(problems.size()) {}

  std::optional<JoinedAir> joined() {
    for (std::size_t i = 0; i < mix_.sources.size(); ++i) {
      source_ = &mix_.sources[i];
      is_first_ = i == 0;
      is_last_ = i + 1 == mix_.sources.size();
      std::visit([&](const auto& what) { add(what); }, source_->what);
    }
    if (problems_.size() > known_problems_) return std::nullopt;
    if (nodes().empty() || nodes().front().at > span_.begin || nodes().back().at < span_.begin) {
      report(fmt::format("wanted air from the plan's start on, {}", iso_utc(span_.begin)),
             "give days or hours that reach it, or typical months after them");
      return std::nullopt;
    }
    if (nodes().back().at < span_.end) repeat_mean_day();
    if (problems_.size() > known_problems_) return std::nullopt;
    return std::move(result_);
  }

 private:
  std::vector<AirNode>& nodes() { return result_.nodes; }

  void report(std::string wanted, std::string hint) {
    problems_.push_back({.file = mix_.file,
                         .line = source_ == nullptr ? 0 : source_->line,
                         .key = "air",
                         .wanted = std::move(wanted),
                         .hint = std::move(hint)});
  }

  void add(const ConstantAir& constant) {
    const AirState state{constant.temperature,
                         vapour_pressure(constant.temperature, constant.humidity)};
    const Instant from = nodes().empty() ? span_.begin : nodes().back().at + one_hour;
    if (from < span_.end) append({{from, state}, {span_.end, state}}, {source_->name}, !is_first_);
  }

  void add(const AirRows& rows) {
    RowsCheck check(rows, span_, problems_);
    check.check_ends(is_first_, is_last_);
    const auto bridged = check.check_gaps();
    if (!check.passed()) return;
    result_.bridged.insert(result_.bridged.end(), bridged.begin(), bridged.end());
    std::vector<AirNode> found;
    found.reserve(rows.rows.size());
    for (const AirRow& row : rows.rows) found.push_back(node_of(row));
    append(found, {source_->name}, false);
  }

  void add(const AirDays& given) {
    for (std::size_t i = 1; i < given.days.size(); ++i)
      if (given.days[i].begins != given.days[i - 1].begins + one_day)
        problems_.push_back({.file = mix_.file,
                             .line = given.days[i].range.line,
                             .key = "on",
                             .wanted = "wanted days one after another, none left out or twice"});
    append(daily_nodes(given), {source_->name}, false);
  }

  /// Typical months serve from the hour after what is known, to the end; some days before the plan
  /// too, for a room that follows outdoors.
  void add(const AirMonths& months) {
    constexpr Minutes before = 5 * one_day;
    const Instant from = nodes().empty() ? span_.begin - before : nodes().back().at;
    if (from >= span_.end) return;
    const auto found = daily_nodes(typical_days(months, {from, span_.end + one_day}));
    if (found.empty())
      return report("wanted at least one typical month", "give the month that the plan begins in");
    hold_months(months, {std::max(from, span_.begin), span_.end});
    const auto month = static_cast<unsigned>(
        Zone::utc().local(std::max(from, span_.begin) + months.standard_offset).on.month());
    append(found, {source_->name, month}, true);
  }

  /// Tells which months of `time` have no values of their own.
  void hold_months(const AirMonths& months, Interval time) {
    const auto month_at = [&](Instant at) {
      const Date on = Zone::utc().local(at + months.standard_offset).on;
      return on.year() / on.month();
    };
    for (auto at = month_at(time.begin); at <= month_at(time.end - Minutes(1));
         at += date::months(1)) {
      const auto month = static_cast<unsigned>(at.month());
      const HeldMonth held{month, month_serving(months, month).value_or(month)};
      auto& told = result_.held_months;
      if (held.held != month && std::ranges::find(told, held) == told.end()) told.push_back(held);
    }
  }

  /// Adds what of `more` lies after the last node.
  void append(const std::vector<AirNode>& more, const NamedSource& source, bool typical) {
    const auto first = nodes().empty() ? more.begin()
                                       : std::upper_bound(more.begin(), more.end(),
                                                          nodes().back().at, before_node);
    if (first == more.end()) return;
    if (!nodes().empty()) {
      const Instant last = nodes().back().at;
      if (first->at - last > longest_bridge && first->at > span_.begin && last < span_.end)
        report(fmt::format("wanted air between {} and {}, where {} has ended and {} has not begun",
                           iso_utc(last), iso_utc(first->at), last_source_.name, source.name),
               "close the gap, or put typical months between");
      if (last > span_.begin && last < span_.end)
        result_.seams.push_back({last, last_source_, source});
    }
    if (typical && !result_.typical_from)
      result_.typical_from = std::max(nodes().empty() ? first->at : nodes().back().at, span_.begin);
    nodes().insert(nodes().end(), first, more.end());
    last_source_ = source;
  }

  void repeat_mean_day() {
    const auto day = typical_day(nodes());
    if (!day) {
      const auto* rows = source_ ? std::get_if<AirRows>(&source_->what) : nullptr;
      problems_.push_back(
          {.file = rows ? rows->file : mix_.file,
           .line = rows && !rows->rows.empty() ? rows->rows.back().line : 0,
           .found =
               fmt::format("rows end at {}, before the plan's horizon", iso_utc(nodes().back().at)),
           .wanted = "at least one full day of rows, to be repeated after the last one",
           .hint = "add rows for the last 24 hours, or shorten the horizon"});
      return;
    }
    if (!result_.typical_from) result_.typical_from = nodes().back().at;
    result_.mean_day_from = nodes().back().at;
    append_typical(nodes(), *day, span_.end);
  }

  const AirMix& mix_;
  Interval span_;
  Problems& problems_;
  std::size_t known_problems_;
  const AirSource* source_ = nullptr;
  bool is_first_ = true, is_last_ = true;
  NamedSource last_source_;
  JoinedAir result_;
};

}  // namespace

std::optional<JoinedAir> joined_air(const AirMix& mix, Interval span, Problems& problems) {
  return Joining(mix, span, problems).joined();
}

}  // namespace tackfree
