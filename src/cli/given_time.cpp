#include "tackfree/cli/given_time.hpp"

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

}  // namespace

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
  if (parse_local_time(text) || parse_instant(text)) return time_given(key, text, job, problems);
  problems.push_back({.key = key,
                      .found = text,
                      .wanted = "wanted now, a clock time of today such as 20:10, yesterday 20:10, "
                                "or a time like 2027-04-05T17:45"});
  return std::nullopt;
}

}  // namespace tackfree
