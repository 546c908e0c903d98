#include "tackfree/input/calendar_values.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// A whole number without sign and with nothing behind it.
std::optional<int> digits(std::string_view text) {
  int value = 0;
  if (text.empty() || text.size() > 9 || text.front() == '-') return std::nullopt;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

std::optional<int> signed_number(std::string_view text) {
  const bool minus = text.starts_with('-');
  if (minus || text.starts_with('+')) text.remove_prefix(1);
  const auto value = digits(text);
  if (!value) return std::nullopt;
  return minus ? -*value : *value;
}

std::vector<std::string_view> split(std::string_view text, char at) {
  std::vector<std::string_view> pieces;
  while (true) {
    const std::size_t end = text.find(at);
    pieces.push_back(text.substr(0, end));
    if (end == std::string_view::npos) return pieces;
    text.remove_prefix(end + 1);
  }
}

constexpr std::array<std::string_view, 7> day_names{"MO", "TU", "WE", "TH", "FR", "SA", "SU"};

std::optional<int> weekday_of(std::string_view text) {
  const auto found = std::find(day_names.begin(), day_names.end(), text);
  if (found == day_names.end()) return std::nullopt;
  return static_cast<int>(found - day_names.begin());
}

/// Names of Windows that calendars of offices write, with their zones. Source: CLDR
/// windowsZones.xml, territory 001; from memory.
constexpr std::array<std::pair<std::string_view, std::string_view>, 36> windows_zones{{
    {"UTC", "Etc/UTC"},
    {"GMT Standard Time", "Europe/London"},
    {"Greenwich Standard Time", "Atlantic/Reykjavik"},
    {"W. Europe Standard Time", "Europe/Berlin"},
    {"Central Europe Standard Time", "Europe/Budapest"},
    {"Central European Standard Time", "Europe/Warsaw"},
    {"Romance Standard Time", "Europe/Paris"},
    {"E. Europe Standard Time", "Europe/Chisinau"},
    {"FLE Standard Time", "Europe/Kiev"},
    {"GTB Standard Time", "Europe/Bucharest"},
    {"Turkey Standard Time", "Europe/Istanbul"},
    {"Russian Standard Time", "Europe/Moscow"},
    {"Israel Standard Time", "Asia/Jerusalem"},
    {"South Africa Standard Time", "Africa/Johannesburg"},
    {"Egypt Standard Time", "Africa/Cairo"},
    {"Arabian Standard Time", "Asia/Dubai"},
    {"India Standard Time", "Asia/Calcutta"},
    {"SE Asia Standard Time", "Asia/Bangkok"},
    {"China Standard Time", "Asia/Shanghai"},
    {"Singapore Standard Time", "Asia/Singapore"},
    {"Tokyo Standard Time", "Asia/Tokyo"},
    {"Korea Standard Time", "Asia/Seoul"},
    {"W. Australia Standard Time", "Australia/Perth"},
    {"AUS Eastern Standard Time", "Australia/Sydney"},
    {"E. Australia Standard Time", "Australia/Brisbane"},
    {"New Zealand Standard Time", "Pacific/Auckland"},
    {"Eastern Standard Time", "America/New_York"},
    {"Central Standard Time", "America/Chicago"},
    {"Mountain Standard Time", "America/Denver"},
    {"US Mountain Standard Time", "America/Phoenix"},
    {"Pacific Standard Time", "America/Los_Angeles"},
    {"Alaskan Standard Time", "America/Anchorage"},
    {"Hawaiian Standard Time", "Pacific/Honolulu"},
    {"Atlantic Standard Time", "America/Halifax"},
    {"Newfoundland Standard Time", "America/St_Johns"},
    {"E. South America Standard Time", "America/Sao_Paulo"},
}};

/// Reads the parts of one rule.
class RuleReading {
 public:
  RuleReading(const Zone& zone, std::string& wrong) : zone_(zone), wrong_(wrong) {}

  std::optional<Recurrence> read(std::string_view text) {
    bool frequency = false;
    for (const std::string_view part : split(text, ';')) {
      if (part.empty()) continue;
      const std::size_t equals = part.find('=');
      if (equals == std::string_view::npos) return refuse("wanted NAME=VALUE in each part");
      const std::string_view name = part.substr(0, equals);
      frequency = frequency || name == "FREQ";
      if (!read_part(name, part.substr(equals + 1))) {
        if (wrong_.empty()) wrong_ = fmt::format("wanted another value for {}", name);
        return std::nullopt;
      }
    }
    if (!frequency) return refuse("wanted FREQ");
    if (rule_.count && (rule_.until || rule_.until_day))
      return refuse("wanted COUNT or UNTIL, not both");
    return checked();
  }

 private:
  std::optional<Recurrence> refuse(std::string_view why) {
    wrong_ = std::string(why);
    return std::nullopt;
  }

  std::optional<Recurrence> checked() {
    using Every = Recurrence::Every;
    const bool ordinal = std::any_of(rule_.weekdays.begin(), rule_.weekdays.end(),
                                     [](const auto& day) { return day.nth != 0; });
    if (ordinal && (rule_.every == Every::day || rule_.every == Every::week))
      return refuse("wanted BYDAY without numbers in a daily or weekly rule");
    if (rule_.every == Every::week && !rule_.month_days.empty())
      return refuse("wanted no BYMONTHDAY in a weekly rule");
    if (rule_.every == Every::year && !rule_.weekdays.empty() && rule_.months.empty())
      return refuse("wanted BYMONTH beside BYDAY in a yearly rule");
    return rule_;
  }

  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): as they stand in the rule, NAME=value
  bool read_part(std::string_view name, std::string_view value) {
    if (name == "FREQ") return read_frequency(value);
    if (name == "INTERVAL") return read_into(value, 1, 10'000, rule_.interval);
    if (name == "COUNT") {
      int count = 0;
      if (!read_into(value, 1, 999'999'999, count)) return false;
      rule_.count = count;
      return true;
    }
    if (name == "UNTIL") return read_until(value);
    if (name == "WKST") {
      const auto day = weekday_of(value);
      rule_.week_begins_on = day.value_or(0);
      return day.has_value();
    }
    if (name == "BYDAY") return read_weekdays(value);
    if (name == "BYMONTHDAY") return read_numbers(value, 31, true, rule_.month_days);
    if (name == "BYMONTH") return read_numbers(value, 12, false, rule_.months);
    if (name == "BYSETPOS") return read_numbers(value, 366, true, rule_.positions);
    wrong_ = fmt::format("wanted a rule without {}, which is not read here", name);
    return false;
  }

  bool read_frequency(std::string_view value) {
    constexpr std::array<std::string_view, 4> names{"DAILY", "WEEKLY", "MONTHLY", "YEARLY"};
    const auto found = std::find(names.begin(), names.end(), value);
    if (found == names.end()) {
      wrong_ = "wanted FREQ to be DAILY, WEEKLY, MONTHLY or YEARLY";
      return false;
    }
    rule_.every = static_cast<Recurrence::Every>(found - names.begin());
    return true;
  }

  static bool read_into(std::string_view value, int least, int most, int& into) {
    const auto number = digits(value);
    into = number.value_or(into);
    return number && *number >= least && *number <= most;
  }

  bool read_until(std::string_view value) {
    const auto time = parse_calendar_time(value);
    if (!time) return false;
    // Zone rules end in 2037, and so does every plan.
    if (time->local.on.year() > date::year(2037)) return true;
    if (!time->has_clock)
      rule_.until_day = time->local.on;
    else
      rule_.until = (time->utc ? Zone::utc() : zone_).instant(time->local);
    return true;
  }

  bool read_weekdays(std::string_view value) {
    for (const std::string_view each : split(value, ',')) {
      if (each.size() < 2) return false;
      const auto day = weekday_of(each.substr(each.size() - 2));
      const std::string_view before = each.substr(0, each.size() - 2);
      const auto nth = before.empty() ? std::optional(0) : signed_number(before);
      if (!day || !nth || *nth < -5 || *nth > 5 || (*nth == 0 && !before.empty())) return false;
      rule_.weekdays.push_back({*nth, *day});
    }
    return rule_.weekdays.size() <= 70;
  }

  static bool read_numbers(std::string_view value, int most, bool from_the_end,
                           std::vector<int>& into) {
    for (const std::string_view each : split(value, ',')) {
      const auto number = signed_number(each);
      if (!number || *number == 0 || *number > most || *number < (from_the_end ? -most : 1))
        return false;
      into.push_back(*number);
    }
    return into.size() <= 400;
  }

  const Zone& zone_;
  std::string& wrong_;
  Recurrence rule_;
};

}  // namespace

std::optional<CalendarTime> parse_calendar_time(std::string_view text) {
  CalendarTime time;
  if (text.size() != 8 && text.size() != 15 && text.size() != 16) return std::nullopt;
  const auto year = digits(text.substr(0, 4)), month = digits(text.substr(4, 2)),
             day = digits(text.substr(6, 2));
  if (!year || !month || !day || *year < 1600) return std::nullopt;
  time.local.on = date::year(*year) / date::month(static_cast<unsigned>(*month)) /
                  date::day(static_cast<unsigned>(*day));
  if (!time.local.on.ok()) return std::nullopt;
  if (text.size() == 8) return time;
  const auto hour = digits(text.substr(9, 2)), minute = digits(text.substr(11, 2)),
             second = digits(text.substr(13, 2));
  if (text[8] != 'T' || !hour || !minute || !second || *hour > 23 || *minute > 59 || *second > 60)
    return std::nullopt;
  if (text.size() == 16 && text[15] != 'Z') return std::nullopt;
  time.has_clock = true;
  time.utc = text.size() == 16;
  time.local.minute_of_day = *hour * 60 + *minute;
  time.seconds = *second;
  return time;
}

std::optional<CalendarDuration> parse_calendar_duration(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  if (!text.starts_with('P') || text.size() < 3 || text.back() == 'T') return std::nullopt;
  text.remove_prefix(1);
  std::int64_t whole_days = 0, seconds = 0;
  bool clock = false;
  while (!text.empty()) {
    if (text.front() == 'T' && !clock) {
      clock = true;
      text.remove_prefix(1);
      continue;
    }
    const std::size_t end = text.find_first_not_of("0123456789");
    const auto amount = digits(text.substr(0, end));
    if (end == std::string_view::npos || !amount || *amount > 320'000'000) return std::nullopt;
    const char unit = text[end];
    if (!clock && unit == 'W')
      whole_days += std::int64_t{7} * *amount;
    else if (!clock && unit == 'D')
      whole_days += *amount;
    else if (clock && unit == 'H')
      seconds += std::int64_t{3600} * *amount;
    else if (clock && unit == 'M')
      seconds += std::int64_t{60} * *amount;
    else if (clock && unit == 'S')
      seconds += *amount;
    else
      return std::nullopt;
    text.remove_prefix(end + 1);
  }
  if (whole_days > 36'525 || seconds > std::int64_t{36'525} * 86'400) return std::nullopt;
  return CalendarDuration{static_cast<int>(whole_days), Minutes((seconds + 59) / 60)};
}

std::optional<Zone> zone_of_tzid(const std::string& tzid,
                                 const std::map<std::string, std::string>& places) {
  if (auto zone = Zone::named(tzid)) return zone;
  // Exporting programs put their own path before the name, which has two or three parts.
  std::size_t slash = tzid.size();
  for (int parts = 1; parts <= 3 && slash != 0 && slash != std::string::npos; ++parts) {
    slash = tzid.rfind('/', slash - 1);
    if (parts > 1 && slash != std::string::npos)
      if (auto zone = Zone::named(std::string_view(tzid).substr(slash + 1))) return zone;
  }
  if (const auto place = places.find(tzid); place != places.end())
    if (auto zone = Zone::named(place->second)) return zone;
  for (const auto& [name, zone] : windows_zones)
    if (name == tzid) return Zone::named(zone);
  return std::nullopt;
}

std::optional<Recurrence> parse_recurrence(std::string_view text, const Zone& zone,
                                           std::string& wrong) {
  wrong.clear();
  return RuleReading(zone, wrong).read(text);
}

}  // namespace tackfree
