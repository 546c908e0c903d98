#include "tackfree/input/air_reader.hpp"

#include "tackfree/input/air_days_reader.hpp"
#include "tackfree/input/calendar_reader.hpp"
#include "tackfree/input/epw_reader.hpp"
#include "tackfree/input/figure_reader.hpp"

#include <array>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// What is taken where the person does not say: the largest plug-in one. Source: assumed.
constexpr Power usual_heater = kilowatts(3);

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

Heating read_heating(JsonCursor& object, const Zone& zone) {
  Heating heating{.set_point = celsius(18),
                  .kind = std::nullopt,
                  .hours = {},
                  .loss = {usual_heat_loss, Origin::assumed, {}},
                  .heater = {usual_heater, Origin::assumed, {}},
                  .zone = zone};
  if (const auto to = read_temperature(object, needed("to"), {0, 40, "C"})) heating.set_point = *to;
  if (const auto kind = object.word("heater_is", heater_kind_words))
    heating.kind = static_cast<HeaterKind>(*kind);
  object.value(needed("hours"));
  heating.hours = read_windows(object, "hours", true);
  if (const auto loss = object.number("loss_w_per_k", {1, 5000, "W/K"}))
    heating.loss = {watts_per_kelvin(*loss), Origin::measured, {}};
  if (const auto heater = object.number("heater_kw", {0.1, 100, "kW"}))
    heating.heater = {kilowatts(*heater), Origin::measured, {}};
  object.refuse_unknown();
  return heating;
}

Indoors read_indoors(JsonCursor& object, const Zone& zone) {
  Indoors indoors{.time_constant = {usual_time_constant, Origin::assumed, {}},
                  .heating = std::nullopt,
                  .humidity_ceiling = std::nullopt};
  if (const auto tau = object.number("time_constant_h", {0.1, 200, "h"}))
    indoors.time_constant = {hours(*tau), Origin::measured, {}};
  if (auto heating = object.object("heating")) indoors.heating = read_heating(*heating, zone);
  if (const auto most = object.number("humidity_ceiling_pct", {20, 100, "% RH"}))
    indoors.humidity_ceiling = humidity_percent(*most);
  object.refuse_unknown();
  return indoors;
}

Boards read_boards(JsonCursor& object) {
  constexpr std::array<std::string_view, 2> places{"room", "outdoors"};
  Boards boards;
  boards.thickness =
      millimetres(object.number(needed("thickness_mm"), {1, 500, "mm"}).value_or(20));
  boards.from_outdoors = object.word("from", places).value_or(0) == 1;
  object.refuse_unknown();
  return boards;
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
  air.refuse_unknown();
  if (air.has("sources") || mix.indoors || mix.boards) return mix;
  if (mix.sources.empty()) return ConstantAir{celsius(20), humidity_percent(50)};
  if (rows) return std::get<AirRows>(std::move(mix.sources.front().what));
  return std::get<ConstantAir>(mix.sources.front().what);
}

}  // namespace tackfree
