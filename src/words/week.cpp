#include "tackfree/words/week.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The days that hold `shown`; a new row begins with each day for which `begins(day, days so far)`.
template <class Begins>
std::vector<Week> rows_of(Interval shown, const Figures& figures, Begins begins) {
  std::vector<Week> rows;
  if (shown.begin >= shown.end) return rows;
  const auto midnight = [&](Date on) { return figures.zone().instant({on, 0}); };
  Date day = figures.local_date(shown.begin);
  std::vector<Instant> midnights{midnight(day)};
  while (midnights.back() < shown.end) {
    day = next_day(day);
    midnights.push_back(midnight(day));
    if (!begins(day, midnights.size() - 1) && midnights.back() < shown.end) continue;
    rows.emplace_back(midnights);
    midnights = {midnight(day)};
  }
  return rows;
}

}  // namespace

std::optional<Interval> Week::within(Interval time) const {
  const Interval cut{std::max(time.begin, midnights_.front()),
                     std::min(time.end, midnights_.back())};
  return cut.begin < cut.end ? std::optional(cut) : std::nullopt;
}

double Week::days_to(Instant at) const {
  if (at <= midnights_.front()) return 0;
  if (at >= midnights_.back()) return static_cast<double>(day_count());
  const auto after = std::upper_bound(midnights_.begin(), midnights_.end(), at);
  const auto day = static_cast<std::size_t>(after - midnights_.begin()) - 1;
  return static_cast<double>(day) +
         static_cast<double>((at - midnights_.at(day)).count()) /
             static_cast<double>((midnights_.at(day + 1) - midnights_.at(day)).count());
}

std::vector<Week> weeks_of(Interval shown, const Figures& figures) {
  return rows_of(shown, figures, [&](Date day, std::size_t /*days*/) {
    return weekday_index(day) == figures.week_begins_on();
  });
}

std::vector<Week> days_in_rows(Interval shown, std::size_t most, const Figures& figures) {
  return rows_of(shown, figures, [&](Date /*day*/, std::size_t so_far) { return so_far == most; });
}

std::string week_words(const Week& week, const Figures& figures) {
  const Instant first = week.midnights().front(), last = week.midnights().back() - Minutes(1);
  if (week.day_count() == 1) return figures.day(first);
  return fmt::format("{} to {}", figures.day(first), figures.day(last));
}

}  // namespace tackfree
