#include "tackfree/input/air_days_reader.hpp"

#include "tackfree/input/air_rows_reader.hpp"
#include "tackfree/input/calendar_reader.hpp"
#include "tackfree/input/figure_reader.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::array<std::string_view, 12> months_in_words{
    "january", "february", "march",     "april",   "may",      "june",
    "july",    "august",   "september", "october", "november", "december"};

std::optional<DayRange> read_range(JsonCursor& object) {
  const std::size_t before = object.problems().size();
  const auto low = read_temperature(object, needed("low"), air_temperature);
  const auto high = read_temperature(object, needed("high"), air_temperature);
  DayRange range{.low = low.value_or(celsius(0)),
                 .high = high.value_or(celsius(0)),
                 .dew_point = read_temperature(object, "dew_point", air_temperature),
                 .humidity = std::nullopt,
                 .line = object.line()};
  if (const auto humidity = object.number("humidity_pct", {1, 100, "% RH"}))
    range.humidity = humidity_percent(*humidity);
  object.refuse_unknown();
  if (object.problems().size() > before) return std::nullopt;
  if (range.low > range.high)
    object.report(object.has("low_c") ? "low_c" : "low_f", "wanted a low no higher than the high");
  if (!range.dew_point && !range.humidity)
    object.report("dew_point_c", "is missing; this or humidity_pct is needed",
                  "a typical mean humidity will do");
  if (range.dew_point && *range.dew_point > range.high)
    object.report(object.has("dew_point_c") ? "dew_point_c" : "dew_point_f",
                  "wanted a dew point no higher than the day's high");
  if (object.problems().size() > before) return std::nullopt;
  return range;
}

std::optional<Date> read_date(JsonCursor& object) {
  const auto text = object.text(needed("on"));
  if (!text) return std::nullopt;
  const auto on = parse_planning_date(*text);
  if (!on) object.report("on", "wanted a date from 1970 to 2037, such as \"2027-04-05\"");
  return on;
}

}  // namespace

Minutes standard_offset(const Zone& zone, int year) {
  const auto offset = [&](unsigned month) {
    const LocalTime noon{date::year(year) / date::month(month) / date::day(1), 720};
    return Zone::utc().instant(noon) - zone.instant(noon);
  };
  return std::min(offset(1), offset(7));
}

AirDays read_air_days(JsonCursor& object, const Zone& zone) {
  AirDays result;
  result.origin = object.text(needed("origin")).value_or("");
  object.value(needed("each"));
  std::vector<JsonCursor> each = object.objects("each");
  for (JsonCursor& day : each) {
    const auto on = read_date(day);
    const auto range = read_range(day);
    if (!on || !range) continue;
    const Instant begins =
        Zone::utc().instant({*on, 0}) - standard_offset(zone, static_cast<int>(on->year()));
    if (!result.days.empty() && begins <= result.days.back().begins)
      day.report("on", begins == result.days.back().begins
                           ? "wanted each day once; this one repeats the day before"
                           : "wanted days in order; this one is before the last");
    else
      result.days.push_back({begins, *range});
  }
  if (object.has("each") && each.empty()) object.report("each", "wanted at least one day");
  object.refuse_unknown();
  return result;
}

AirMonths read_air_months(JsonCursor& object, const Zone& zone) {
  AirMonths result;
  result.origin = object.text(needed("origin")).value_or("");
  // Any year: what counts is how far standard time is from UTC.
  result.standard_offset = standard_offset(zone, 2027);
  object.value(needed("each"));
  for (JsonCursor& month : object.objects("each")) {
    const auto index = month.word(needed("month"), months_in_words);
    const auto range = read_range(month);
    if (!index || !range) continue;
    if (result.months.at(*index))
      month.report("month", "wanted each month once");
    else
      result.months.at(*index) = range;
  }
  object.refuse_unknown();
  return result;
}

}  // namespace tackfree
