#include "tackfree/input/calendar_reader.hpp"

#include "tackfree/input/busy_calendar_reader.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::array<std::string_view, 7> weekdays{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
constexpr std::string_view wanted_window =
    "wanted hours from begin to end, such as \"18:30-21:30\"";

/// `18:30-21:30`; begin may be after end here.
std::optional<DayWindow> parse_window(std::string_view text) {
  const std::size_t dash = text.find('-');
  if (dash == std::string_view::npos) return std::nullopt;
  const auto begin = parse_clock(text.substr(0, dash));
  const auto end = parse_clock(text.substr(dash + 1));
  if (!begin || !end || *begin == *end) return std::nullopt;
  return DayWindow{*begin, *end};
}

std::string shown(const DayWindow& window) {
  return iso_clock(window.begin) + "-" + iso_clock(window.end);
}

std::vector<Date> read_days_off(JsonCursor& calendar) {
  std::vector<Date> days;
  for (const JsonNode* node : calendar.texts("days_off")) {
    if (const auto on = parse_planning_date(node->text))
      days.push_back(*on);
    else
      calendar.report(*node, calendar.path_of("days_off"),
                      "wanted a date from 1970 to 2037, such as \"2027-04-05\"");
  }
  return days;
}

std::vector<AddedHours> read_added(JsonCursor& calendar) {
  std::vector<AddedHours> all;
  for (JsonCursor& object : calendar.objects("added")) {
    const auto text = object.text(needed("on"));
    const auto on = text ? parse_planning_date(*text) : std::nullopt;
    if (text && !on) object.report("on", "wanted a date from 1970 to 2037, such as \"2027-04-05\"");
    object.value(needed("hours"));
    AddedHours added{.on = on.value_or(Date{}), .windows = read_windows(object, "hours", false)};
    object.refuse_unknown();
    if (on) all.push_back(std::move(added));
  }
  return all;
}

}  // namespace

std::vector<DayWindow> read_windows(JsonCursor& at, std::string_view key, bool over_midnight) {
  std::vector<DayWindow> windows;
  for (const JsonNode* node : at.texts(key)) {
    const auto window = parse_window(node->text);
    if (!window) {
      at.report(*node, at.path_of(key), std::string(wanted_window));
    } else if (window->begin < window->end) {
      windows.push_back(*window);
    } else if (over_midnight) {
      windows.push_back({0, window->end});
      if (window->begin < 24 * 60) windows.push_back({window->begin, 24 * 60});
    } else {
      at.report(*node, at.path_of(key), "wanted the end after the begin",
                "split hours over midnight: 22:00-24:00, and 00:00-01:00 of the next day");
    }
  }
  std::erase_if(windows, [](const DayWindow& window) { return window.begin == window.end; });
  std::sort(windows.begin(), windows.end());
  for (std::size_t i = 1; i < windows.size(); ++i)
    if (windows[i].begin < windows[i - 1].end)
      at.report(key, fmt::format("wanted hours that do not overlap; {} and {} do",
                                 shown(windows[i - 1]), shown(windows[i])));
  return windows;
}

std::optional<Date> parse_planning_date(std::string_view text) {
  const auto on = parse_date(text);
  if (!on || on->year() < date::year(1970) || on->year() > date::year(2037)) return std::nullopt;
  return on;
}

namespace {

/// One person's files together are held to the same limits as each of them.
void read_busy_files(JsonCursor& calendar, NamedFiles& files, WorkCalendar& result) {
  for (const JsonNode* node : calendar.texts("busy_files")) {
    const std::filesystem::path path = files.path_of(node->text, "a busy calendar");
    const auto text = files.text(path, calendar.problems());
    if (!text) continue;
    auto busy = busy_events(*text, path.string(), result.zone, calendar.problems());
    std::ranges::move(busy, std::back_inserter(result.busy));
    const auto rules = std::ranges::count_if(
        result.busy, [](const BusyEvent& event) { return event.repeats.has_value(); });
    if (result.busy.size() <= most_busy_events &&
        static_cast<std::size_t>(rules) <= most_busy_rules)
      continue;
    calendar.report(*node, calendar.path_of("busy_files"),
                    fmt::format("wanted at most {} events, and {} repeating ones, in all busy "
                                "files of one person",
                                most_busy_events, most_busy_rules),
                    "export a shorter stretch of the calendars");
    return;
  }
}

/// The hours that repeat, and what closes or adds to them; true when there are any.
bool read_hours(JsonCursor& calendar, NamedFiles& files, WorkCalendar& result) {
  bool any = false;
  if (auto weekly = calendar.object("weekly")) {
    for (std::size_t day = 0; day < weekdays.size(); ++day)
      result.weekly[day] = read_windows(*weekly, weekdays[day], false);
    weekly->refuse_unknown();
  }
  for (const auto& day : result.weekly) any = any || !day.empty();
  const auto off = read_days_off(calendar);
  result.days_off.insert(result.days_off.end(), off.begin(), off.end());
  const auto added = read_added(calendar);
  result.added.insert(result.added.end(), added.begin(), added.end());
  for (const AddedHours& each : result.added) any = any || !each.windows.empty();
  read_busy_files(calendar, files, result);
  return any;
}

void report_no_hours(JsonCursor& calendar) {
  calendar.report("weekly", "has no working hours; wanted at least one stretch",
                  R"(such as "sat": ["09:00-12:00"])");
}

}  // namespace

WorkCalendar read_calendar(JsonCursor& calendar, const Zone& zone, NamedFiles& files,
                           bool hours_needed) {
  WorkCalendar result;
  result.zone = zone;
  const std::size_t before = calendar.problems().size();
  const bool any = read_hours(calendar, files, result);
  result.no_power_sanding = read_windows(calendar, "no_power_sanding", true);
  if (!any && hours_needed && calendar.problems().size() == before) report_no_hours(calendar);
  if (const auto late = calendar.text("late_after")) {
    if (const auto clock = parse_clock(*late))
      result.late_after = *clock;
    else
      calendar.report("late_after", "wanted a clock time, such as \"21:00\"");
  }
  calendar.refuse_unknown();
  return result;
}

WorkCalendar read_own_hours(JsonCursor& person, const WorkCalendar& shared, NamedFiles& files) {
  WorkCalendar result = shared;
  const std::size_t before = person.problems().size();
  const bool any = read_hours(person, files, result);
  if (!any && person.problems().size() == before) report_no_hours(person);
  return result;
}

}  // namespace tackfree
