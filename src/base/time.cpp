#include "tackfree/base/time.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include <date/tz.h>
#include <fmt/format.h>

static_assert(
    USE_OS_TZDB,
    "compile through the CMake target date::date-tz: other settings do not match the library");

namespace tackfree {

namespace {

/// The whole of `text` as a number of digits, or nothing.
std::optional<int> digits(std::string_view text) {
  constexpr std::size_t most = 9;  // a whole number holds them whatever they are
  if (text.empty() || text.size() > most) return std::nullopt;
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

date::local_time<Minutes> as_local(const LocalTime& local) {
  return date::local_days(local.on) + Minutes(local.minute_of_day);
}

}  // namespace

std::vector<Interval> joined(std::vector<Interval> stretches) {
  std::sort(stretches.begin(), stretches.end());
  std::vector<Interval> result;
  for (const Interval& stretch : stretches) {
    if (!result.empty() && stretch.begin <= result.back().end)
      result.back().end = std::max(result.back().end, stretch.end);
    else
      result.push_back(stretch);
  }
  return result;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): two lists of stretches by its nature
std::vector<Interval> without(const std::vector<Interval>& open,
                              const std::vector<Interval>& closed) {
  std::vector<Interval> result;
  auto shut = closed.begin();
  for (Interval stretch : open) {
    while (shut != closed.end() && shut->end <= stretch.begin) ++shut;
    for (auto each = shut; each != closed.end() && each->begin < stretch.end; ++each) {
      if (stretch.begin < each->begin) result.push_back({stretch.begin, each->begin});
      stretch.begin = std::max(stretch.begin, each->end);
    }
    if (stretch.begin < stretch.end) result.push_back(stretch);
  }
  return result;
}

Minutes whole_minutes_up(Duration amount) {
  // A millionth of a minute of slack keeps 8 h from becoming 481 min by rounding noise.
  return Minutes(static_cast<Minutes::rep>(std::ceil(amount.in(minutes)-1e-6)));
}

Duration to_duration(Minutes amount) { return minutes(static_cast<double>(amount.count())); }

std::optional<Zone> Zone::named(std::string_view name) {
  try {
    return Zone(std::string(name), date::locate_zone(std::string(name)));
  } catch (const std::runtime_error&) {
    return std::nullopt;
  }
}

Zone Zone::utc() {
  auto zone = named("Etc/UTC");
  if (!zone) throw std::runtime_error("the time zone data base has no Etc/UTC: install tzdata");
  return *zone;
}

LocalTime Zone::local(Instant at) const {
  const auto local = rules_->to_local(at);
  const auto day = date::floor<date::days>(local);
  return {Date(day), static_cast<int>((local - day) / Minutes(1))};
}

LocatedTime Zone::locate(const LocalTime& local) const {
  const date::local_info info = rules_->get_info(as_local(local));
  const auto offset = date::floor<Minutes>(info.first.offset);
  const Instant at{as_local(local).time_since_epoch() - offset};
  switch (info.result) {
    case date::local_info::nonexistent:
      return {at, LocalFate::skipped};
    case date::local_info::ambiguous:
      return {at, LocalFate::repeated};
    default:
      return {at, LocalFate::unique};
  }
}

const std::vector<std::string>& zone_names() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> all;
    for (const auto& zone : date::get_tzdb().zones) all.push_back(zone.name());
    return all;
  }();
  return names;
}

Instant last_zoned_instant() {
  return date::sys_days(Date(date::year(2037), date::month(12), date::day(31)));
}

Date add_days(Date on, int count) { return Date(date::sys_days(on) + date::days(count)); }
Date next_day(Date on) { return add_days(on, 1); }
int weekday_index(Date on) {
  return static_cast<int>(date::weekday(date::sys_days(on)).iso_encoding()) - 1;
}
std::string_view month_name(unsigned month) {
  constexpr std::array<std::string_view, 12> names{"January",   "February", "March",    "April",
                                                   "May",       "June",     "July",     "August",
                                                   "September", "October",  "November", "December"};
  return names.at(month - 1);
}
int days_between(Date from, Date to) {
  return static_cast<int>((date::sys_days(to) - date::sys_days(from)).count());
}

std::optional<Date> parse_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4)), month = digits(text.substr(5, 2)),
             day = digits(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  const Date on(date::year(*year), date::month(static_cast<unsigned>(*month)),
                date::day(static_cast<unsigned>(*day)));
  return on.ok() ? std::optional(on) : std::nullopt;
}

std::optional<int> parse_clock(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon > 2 || text.size() != colon + 3) return std::nullopt;  // npos is over 2 too
  const auto hour = digits(text.substr(0, colon)), minute = digits(text.substr(colon + 1));
  if (!hour || !minute || *minute > 59 || *hour * 60 + *minute > 24 * 60) return std::nullopt;
  return *hour * 60 + *minute;
}

std::optional<LocalTime> parse_local_time(std::string_view text) {
  if (text.size() < 12 || (text[10] != 'T' && text[10] != ' ')) return std::nullopt;
  const auto on = parse_date(text.substr(0, 10));
  const auto clock = parse_clock(text.substr(11));
  if (!on || !clock || *clock == 24 * 60) return std::nullopt;
  return LocalTime{*on, *clock};
}

std::optional<Instant> parse_instant(std::string_view text) {
  Minutes offset{0};
  if (text.ends_with('Z')) {
    text.remove_suffix(1);
  } else {
    if (text.size() < 17) return std::nullopt;
    const std::string_view zone = text.substr(text.size() - 6);
    const auto clock = parse_clock(zone.substr(1));
    if ((zone[0] != '+' && zone[0] != '-') || !clock) return std::nullopt;
    offset = Minutes(zone[0] == '+' ? *clock : -*clock);
    text.remove_suffix(6);
  }
  if (text.size() == 19) {
    const auto seconds = digits(text.substr(17));
    if (text[16] != ':' || !seconds || *seconds > 59) return std::nullopt;
    text = text.substr(0, 16);
  }
  const auto local = parse_local_time(text);
  if (!local) return std::nullopt;
  return Instant(as_local(*local).time_since_epoch()) - offset;
}

std::string iso_date(Date on) { return date::format("%F", on); }

std::string iso_clock(int minute_of_day) {
  return fmt::format("{:02}:{:02}", minute_of_day / 60, minute_of_day % 60);
}

std::string clock_of_12_hours(int minute_of_day) {
  const int hour = minute_of_day / 60;
  return fmt::format("{}:{:02} {}", (hour + 11) % 12 + 1, minute_of_day % 60,
                     hour < 12 ? "am" : "pm");
}

std::string iso_local(Instant at, const Zone& zone) {
  const LocalTime local = zone.local(at);
  const auto offset = as_local(local).time_since_epoch() - at.time_since_epoch();
  const auto shift = std::abs(offset.count());
  return fmt::format("{}T{}{}{:02}:{:02}", iso_date(local.on), iso_clock(local.minute_of_day),
                     offset.count() < 0 ? '-' : '+', shift / 60, shift % 60);
}

std::string iso_utc(Instant at) { return date::format("%FT%H:%M:00Z", at); }

}  // namespace tackfree
