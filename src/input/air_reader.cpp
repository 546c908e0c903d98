#include "tackfree/input/air_reader.hpp"

#include "tackfree/input/calendar_reader.hpp"
#include "tackfree/input/epw_reader.hpp"
#include "tackfree/input/figure_reader.hpp"
#include "tackfree/input/room_reader.hpp"

#include <algorithm>
#include <array>
#include <utility>

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

/// Local time less UTC without daylight saving: the smaller of that in January and in July.
Minutes standard_offset(const Zone& zone, int year) {
  const auto offset = [&](unsigned month) {
    const LocalTime noon{date::year(year) / date::month(month) / date::day(1), 720};
    return Zone::utc().instant(noon) - zone.instant(noon);
  };
  return std::min(offset(1), offset(7));
}

AirRowsFormat read_format(JsonCursor& rows) {
  constexpr std::array<std::string_view, 2> clocks{"utc", "local"};
  constexpr std::array<std::string_view, 2> units{"C", "F"};
  AirRowsFormat format;
  format.time_column = rows.text(needed("time_column")).value_or("");
  format.time_is_local = rows.word(needed("time_is"), clocks).value_or(0) == 1;
  format.temperature_column = rows.text(needed("temperature_column")).value_or("");
  format.in_fahrenheit = rows.word(needed("temperature_unit"), units).value_or(0) == 1;
  format.dew_point_column = rows.text("dew_point_column").value_or("");
  format.humidity_column = rows.text("humidity_column").value_or("");
  if (!rows.has("dew_point_column") && !rows.has("humidity_column"))
    rows.report("dew_point_column", "is missing; this or humidity_column is needed");
  format.replay_in_year = rows.whole("replay_in_year", {1970, 2037, "years"});
  return format;
}

AirRows read_rows(JsonCursor& rows, NamedFiles& files, const Zone& zone) {
  AirRows air;
  const std::size_t before = rows.problems().size();
  air.file = rows.text(needed("file")).value_or("");
  const AirRowsFormat format = read_format(rows);
  air.origin = rows.text(needed("origin")).value_or("");
  rows.refuse_unknown();
  if (rows.problems().size() > before) return air;
  const std::filesystem::path path = files.path_of(air.file, "a file of air");
  const auto text = files.text(path, rows.problems());
  if (!text) return air;
  AirRows found = parse_air_rows(*text, path.string(), format, zone, rows.problems());
  air.rows = std::move(found.rows);
  air.recorded_in = found.recorded_in;
  return air;
}

ConstantAir read_constant(JsonCursor& constant) {
  ConstantAir air;
  air.temperature =
      read_temperature(constant, needed("temperature"), air_temperature).value_or(celsius(20));
  air.humidity =
      humidity_percent(constant.number(needed("humidity_pct"), {0, 100, "% RH"}).value_or(50));
  constant.refuse_unknown();
  return air;
}

AirRows read_epw_source(JsonCursor& epw, NamedFiles& files) {
  const std::size_t before = epw.problems().size();
  AirRows air;
  air.file = epw.text(needed("file")).value_or("");
  air.origin = epw.text(needed("origin")).value_or("");
  const auto year = epw.whole(needed("replay_in_year"), {1970, 2036, "years"});
  epw.refuse_unknown();
  if (epw.problems().size() > before) return air;
  const std::filesystem::path path = files.path_of(air.file, "a weather file");
  const auto text = files.text(path, epw.problems());
  if (text) air.rows = parse_epw(*text, path.string(), *year, epw.problems());
  return air;
}

std::string usual_name(const AirSource& source) {
  if (const auto* rows = std::get_if<AirRows>(&source.what)) return "hours of " + rows->file;
  if (std::holds_alternative<AirDays>(source.what)) return "daily lows and highs";
  return std::holds_alternative<ConstantAir>(source.what) ? "constant air" : "";
}

std::optional<AirSource> read_source(JsonCursor& object, NamedFiles& files, const Zone& zone) {
  constexpr std::array<std::string_view, 5> kinds{"rows", "epw", "days", "months", "constant"};
  AirSource source;
  source.line = object.line();
  const auto name = object.text("name");
  int count = 0;
  for (const std::string_view kind : kinds) {
    auto inner = object.object(JsonKey(kind));
    if (!object.has(kind)) continue;
    ++count;
    if (!inner) continue;
    if (kind == "rows") source.what = read_rows(*inner, files, zone);
    if (kind == "epw") source.what = read_epw_source(*inner, files);
    if (kind == "days") source.what = read_air_days(*inner, zone);
    if (kind == "months") source.what = read_air_months(*inner, zone);
    if (kind == "constant") source.what = read_constant(*inner);
  }
  if (count != 1)
    object.report("rows", "wanted one of rows, epw, days, months and constant in each source");
  object.refuse_unknown();
  if (count != 1) return std::nullopt;
  source.name = name.value_or(usual_name(source));
  return source;
}

}  // namespace

AirRecord read_air(JsonCursor& air, NamedFiles& files, const Zone& zone) {
  AirMix mix;
  mix.file = air.file();
  auto constant = air.object("constant");
  auto rows = air.object("rows");
  std::vector<JsonCursor> sources = air.objects("sources");
  const int kinds = int{air.has("constant")} + int{air.has("rows")} + int{air.has("sources")};
  if (kinds != 1)
    air.report("sources", "wanted constant, rows or sources, one of them");
  else if (constant)
    mix.sources.push_back({"", read_constant(*constant), air.line()});
  else if (rows)
    mix.sources.push_back({"", read_rows(*rows, files, zone), air.line()});
  for (JsonCursor& object : sources)
    if (auto source = read_source(object, files, zone)) mix.sources.push_back(std::move(*source));
  if (air.has("sources") && sources.empty())
    air.report("sources", "wanted a list of sources, at least one");
  if (auto indoors = air.object("indoors")) mix.indoors = read_indoors(*indoors, zone);
  if (auto boards = air.object("boards")) mix.boards = read_boards(*boards);
  for (JsonCursor& object : air.objects("conditioned"))
    if (auto each = read_conditioned_air(object, zone)) mix.conditioned.push_back(*each);
  air.refuse_unknown();
  if (air.has("sources") || mix.indoors || mix.boards || !mix.conditioned.empty()) return mix;
  if (mix.sources.empty()) return ConstantAir{celsius(20), humidity_percent(50)};
  if (rows) return std::get<AirRows>(std::move(mix.sources.front().what));
  return std::get<ConstantAir>(mix.sources.front().what);
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
