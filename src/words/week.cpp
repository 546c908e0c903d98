#include "tackfree/words/week.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

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
  std::vector<Week> weeks;
  if (shown.begin >= shown.end) return weeks;
  const auto midnight = [&](Date on) { return figures.zone().instant({on, 0}); };
  Date day = figures.local_date(shown.begin);
  std::vector<Instant> midnights{midnight(day)};
  while (midnights.back() < shown.end) {
    day = next_day(day);
    midnights.push_back(midnight(day));
    if (weekday_index(day) != figures.week_begins_on() && midnights.back() < shown.end) continue;
    weeks.emplace_back(midnights);
    midnights = {midnight(day)};
  }
  return weeks;
}

std::string week_words(const Week& week, const Figures& figures) {
  const Instant first = week.midnights().front(), last = week.midnights().back() - Minutes(1);
  if (week.day_count() == 1) return figures.day(first);
  return fmt::format("{} to {}", figures.day(first), figures.day(last));
}

}  // namespace tackfree
