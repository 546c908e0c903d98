#include "tackfree/cli/given_time.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdlib>
#include <string_view>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// `20:10`, `8:10 pm` or `8 pm` as minutes after midnight.
std::optional<int> clock_given(std::string_view text) {
  const bool morning = text.ends_with("am");
  const bool evening = text.ends_with("pm");
  if (!morning && !evening) return parse_clock(text.size() == 4 ? "0" + std::string(text) : text);
  text.remove_suffix(2);
  while (text.ends_with(' ')) text.remove_suffix(1);
  std::string clock(text);
  if (clock.find(':') == std::string::npos) clock += ":00";
  if (clock.size() == 4) clock = "0" + clock;
  const auto minute = parse_clock(clock);
  constexpr int noon = 12 * 60;
  if (!minute || *minute >= noon + 60 || *minute < 60) return std::nullopt;
  return *minute % noon + (evening ? noon : 0);
}

/// `thursday`, or its first three letters: the next one, today counted.
std::optional<Date> weekday_given(std::string_view text, Date today) {
  constexpr std::array<std::string_view, 7> names{"monday", "tuesday",  "wednesday", "thursday",
                                                  "friday", "saturday", "sunday"};
  for (std::size_t i = 0; i < names.size(); ++i)
    if (text == names[i] || text == names[i].substr(0, 3))
      return add_days(today, (static_cast<int>(i) - weekday_index(today) + 7) % 7);
  return std::nullopt;
}

std::optional<Date> day_given(const std::string& text, Date today, Problems& problems) {
  if (text.empty() || text == "today") return today;
  if (text == "tomorrow") return next_day(today);
  std::string lower = text;
  std::ranges::transform(lower, lower.begin(), [](unsigned char c) { return std::tolower(c); });
  if (const auto day = weekday_given(lower, today)) return day;
  const auto date = parse_date(text);
  constexpr int most_days = 3 * 366;
  if (date && std::abs(days_between(today, *date)) <= most_days) return date;
  problems.push_back({.key = "--on",
                      .found = text,
                      .wanted = "wanted today, tomorrow, a weekday, or a date like 2027-04-15"});
  return std::nullopt;
}

/// The clock time of the day under the option `key`.
std::optional<Instant> clock_of(const std::string& key, const std::string& text, Date on,
                                const Zone& zone, Problems& problems) {
  const auto minute = clock_given(text);
  constexpr int whole_day = 24 * 60;
  if (!minute) {
    problems.push_back(
        {.key = key, .found = text, .wanted = "wanted a clock time such as 20:10 or 8:10 pm"});
    return std::nullopt;
  }
  return *minute == whole_day ? zone.instant({next_day(on), 0}) : zone.instant({on, *minute});
}

}  // namespace

std::optional<Interval> hours_given(const HoursTold& told, const Job& job, Instant now,
                                    Problems& problems) {
  const Zone& zone = job.calendar.zone;
  const Date today = zone.local(now).on;
  const auto on = day_given(told.on, today, problems);
  if (!on) return std::nullopt;
  std::optional<Instant> from = zone.instant({*on, 0});
  std::optional<Instant> until = zone.instant({next_day(*on), 0});
  if (told.from_now && *on == today) from = now;
  if (!told.from.empty()) from = clock_of("--from", told.from, *on, zone, problems);
  if (!told.until.empty()) until = clock_of("--until", told.until, *on, zone, problems);
  if (told.from_now && told.from.empty() && *on != today)
    problems.push_back(
        {.key = "--from", .wanted = "wanted the clock time from which you are free"});
  else if (from && until && *from >= *until)
    problems.push_back({.key = "--until",
                        .found = told.until,
                        .wanted = "wanted a later time than that from which they count"});
  else if (from && until)
    return Interval{*from, *until};
  return std::nullopt;
}

std::optional<Instant> time_given(const std::string& key, const std::string& text, const Job& job,
                                  Problems& problems) {
  std::optional<Instant> at = parse_instant(text);
  if (const auto local = parse_local_time(text); local && !at) {
    const LocatedTime located = job.calendar.zone.locate(*local);
    if (located.fate == LocalFate::skipped) {
      problems.push_back(
          {.key = key,
           .found = text,
           .wanted = fmt::format("wanted a time that {} has; the clocks skip this one",
                                 job.calendar.zone.name())});
      return std::nullopt;
    }
    at = located.at;
  }
  if (!at)
    problems.push_back({.key = key,
                        .found = text,
                        .wanted = "wanted a time like 2027-04-05T17:45, or with Z or an offset"});
  else if (*at + whole_minutes_up(job.horizon) > last_zoned_instant())
    problems.push_back(
        {.key = key,
         .found = text,
         .wanted =
             "wanted a plan that ends before 2038: zone rules after 2037 are not known here"});
  else
    return at;
  return std::nullopt;
}

std::optional<Instant> moment_given(const std::string& key, const std::string& text, const Job& job,
                                    Instant now, Problems& problems) {
  if (text == "now") return now;
  constexpr std::string_view day_before = "yesterday ";
  const bool yesterday = text.starts_with(day_before);
  const auto clock = clock_given(std::string_view(text).substr(yesterday ? day_before.size() : 0));
  const Date today = job.calendar.zone.local(now).on;
  if (clock && *clock < 24 * 60)
    return job.calendar.zone.instant({yesterday ? add_days(today, -1) : today, *clock});
  constexpr std::size_t date_length = 10;
  const auto on = parse_date(std::string_view(text).substr(0, date_length));
  if (on && text.size() > date_length && text[date_length] == ' ')
    if (const auto of_day = clock_given(std::string_view(text).substr(date_length + 1));
        of_day && *of_day < 24 * 60)
      return time_given(key, fmt::format("{}T{}", iso_date(*on), iso_clock(*of_day)), job,
                        problems);
  if (parse_local_time(text) || parse_instant(text)) return time_given(key, text, job, problems);
  problems.push_back({.key = key,
                      .found = text,
                      .wanted = "wanted now, a clock time of today such as 20:10, yesterday 20:10, "
                                "or a time like 2027-04-05T17:45"});
  return std::nullopt;
}

}  // namespace tackfree
