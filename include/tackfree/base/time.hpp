// Time: UTC in whole minutes inside; local dates and clock times only at the edges, by IANA zone.
#pragma once

#include "tackfree/base/units.hpp"

#include <chrono>
#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <date/date.h>

namespace date {
class time_zone;
}

namespace tackfree {

/// A point in time, UTC, whole minutes.
using Instant = std::chrono::sys_time<std::chrono::minutes>;
using Minutes = std::chrono::minutes;

inline constexpr Minutes one_hour{60};
inline constexpr Minutes one_day{24 * 60};
/// A calendar date with no zone.
using Date = date::year_month_day;

/// A half-open stretch of time, from `begin` up to but not including `end`.
struct Interval {
  Instant begin;
  Instant end;
  Minutes length() const { return end - begin; }
  friend auto operator<=>(const Interval&, const Interval&) = default;
};

/// In order of time, touching and overlapping stretches made one.
std::vector<Interval> joined(std::vector<Interval> stretches);

/// `open` without `closed`; both in order and apart.
std::vector<Interval> without(const std::vector<Interval>& open,
                              const std::vector<Interval>& closed);

/// `amount` in whole minutes, rounded up: waits are never cut short.
Minutes whole_minutes_up(Duration amount);
Duration to_duration(Minutes amount);

/// A local date and clock time: minutes after midnight, 0 to 1439.
struct LocalTime {
  Date on;
  int minute_of_day = 0;
  friend bool operator==(const LocalTime&, const LocalTime&) = default;
};

/// What became of a local time when it was turned into an instant.
enum class LocalFate { unique, skipped, repeated };

struct LocatedTime {
  Instant at;
  LocalFate fate = LocalFate::unique;
};

/// An IANA time zone, looked up once.
class Zone {
 public:
  /// Nothing when the name is unknown. Names are case-sensitive, as in the IANA database.
  static std::optional<Zone> named(std::string_view name);
  static Zone utc();

  const std::string& name() const { return name_; }
  LocalTime local(Instant at) const;
  /// Skipped times use the offset before the gap, repeated ones the first: RFC 5545, 3.3.5.
  LocatedTime locate(const LocalTime& local) const;
  Instant instant(const LocalTime& local) const { return locate(local).at; }

 private:
  Zone(std::string name, const date::time_zone* rules) : name_(std::move(name)), rules_(rules) {}
  std::string name_;
  const date::time_zone* rules_;  // owned by the library, for the life of the program
};

/// Every IANA zone name on this machine, for "did you mean".
const std::vector<std::string>& zone_names();

/// The last instant for which zone offsets are right: the library ignores rules after 2037.
Instant last_zoned_instant();

Date next_day(Date on);
/// 0 is Monday, 6 Sunday (ISO 8601 order).
int weekday_index(Date on);
/// `January`, of 1 to 12.
std::string_view month_name(unsigned month);
Date add_days(Date on, int count);
int days_between(Date from, Date to);

/// `2027-04-10`; nothing when malformed or no such day.
std::optional<Date> parse_date(std::string_view text);
/// `18:30`, 00:00 to 24:00, as minutes after midnight.
std::optional<int> parse_clock(std::string_view text);
/// `2027-04-10T18:30` or `2027-04-10 18:30`, local.
std::optional<LocalTime> parse_local_time(std::string_view text);
/// `2027-04-10T22:30:00Z` (seconds optional, cut to the minute), or with an offset `+02:00`.
std::optional<Instant> parse_instant(std::string_view text);

std::string iso_date(Date on);
std::string iso_clock(int minute_of_day);
/// `6:30 pm`, of 0 to 1439
std::string clock_of_12_hours(int minute_of_day);
/// `2027-04-10T18:30-04:00`
std::string iso_local(Instant at, const Zone& zone);
/// `2027-04-10T22:30:00Z`
std::string iso_utc(Instant at);

}  // namespace tackfree
