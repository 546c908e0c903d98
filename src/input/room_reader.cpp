#include "tackfree/input/room_reader.hpp"

#include "tackfree/input/calendar_reader.hpp"
#include "tackfree/input/figure_reader.hpp"
#include "tackfree/input/solvent_reader.hpp"
#include "tackfree/syntax/measure.hpp"

namespace tackfree {

namespace {

std::optional<Opening> read_opening(JsonCursor& object, JsonKey key) {
  const auto word = object.word(key, opening_words);
  if (!word) return std::nullopt;
  return static_cast<Opening>(*word);
}

/// The fan's flow in m3/h or cfm, rated unless it is said to be measured.
std::optional<Fan> read_fan(JsonCursor& airing) {
  constexpr std::array<std::string_view, 2> kinds{"rated", "measured"};
  std::optional<Fan> fan;
  if (const auto flow = airing.number("fan_m3_per_h", {1, 100000, "m3 per hour"}))
    fan = Fan{.flow = cubic_metres_per_hour(*flow)};
  if (const auto flow = airing.number("fan_cfm", {1, 60000, "cubic feet per minute"})) {
    if (fan) airing.report("fan_cfm", "wanted either fan_m3_per_h or fan_cfm, not both");
    fan = Fan{.flow = cubic_feet_per_minute(*flow)};
  }
  if (const auto kind = airing.word("fan_flow_is", kinds)) {
    if (fan)
      fan->measured = *kind == 1;
    else
      airing.report("fan_flow_is", "wanted the flow as well, fan_m3_per_h or fan_cfm");
  }
  return fan;
}

void read_airing(JsonCursor& airing, Room& room, AirChanges& changes) {
  FigureReader figures(airing, Origin::measured);
  read_air_changes(figures, changes);
  room.fan = read_fan(airing);
  AiringHabit habit;
  const auto during = read_opening(airing, "while_coating");
  habit.while_coating = during.value_or(Opening::closed);
  auto after = airing.object("after");
  if (after) {
    habit.after = read_opening(*after, needed("state")).value_or(Opening::closed);
    habit.after_for = hours(after->number(needed("hours"), {0, 240, "h"}).value_or(0));
    after->refuse_unknown();
  }
  if (during || after) room.airing = habit;
  const bool fan_runs =
      habit.while_coating == Opening::open_and_fan || habit.after == Opening::open_and_fan;
  if (fan_runs && !room.fan)
    airing.report(habit.while_coating == Opening::open_and_fan ? "while_coating" : "after",
                  "wanted the fan's flow as well, fan_m3_per_h or fan_cfm");
  airing.refuse_unknown();
}

/// What is taken where the person does not say: the largest plug-in one. Source: assumed.
constexpr Power usual_heater = kilowatts(3);

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

std::optional<Instant> read_end(JsonCursor& object, std::string_view key, const Zone& zone) {
  const auto text = object.text(JsonKey(key));
  if (!text) return std::nullopt;
  const auto local = parse_local_time(*text);
  if (local && parse_planning_date(iso_date(local->on))) return zone.instant(*local);
  object.report(key, "wanted a local time from 1970 to 2037, such as \"2027-04-24T18:00\"");
  return std::nullopt;
}

}  // namespace

Room read_room(JsonCursor& job, AirChanges& changes) {
  Room room;
  auto object = job.object("room");
  if (!object) return room;
  room.name = object->text("name").value_or("room");
  if (const auto text = object->text("volume")) {
    const Reading<Volume> reading = read_volume(*text);
    if (!reading.value) object->report("volume", reading.wanted, "such as \"90 m3\"");
    room.volume = reading.value;
  }
  if (const auto number = object->number("volume_m3", {1, 100000, "m3"})) {
    if (object->has("volume")) object->report("volume_m3", "wanted volume or volume_m3, not both");
    room.volume = cubic_metres(*number);
  }
  room.attached_to_house = object->flag("attached_to_house").value_or(room.attached_to_house);
  for (const JsonNode* source : object->texts("ignition_sources"))
    room.ignition_sources.push_back(source->text);
  if (const auto speed = object->number("air_speed_m_s", {0, 5, "m/s"}))
    room.air_speed = metres_per_second(*speed);
  if (auto airing = object->object("airing")) read_airing(*airing, room, changes);
  object->refuse_unknown();
  return room;
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

std::optional<ConditionedAir> read_conditioned_air(JsonCursor& object, const Zone& zone) {
  const std::size_t before = object.problems().size();
  ConditionedAir air;
  const auto from = read_end(object, "from", zone);
  const auto until = read_end(object, "until", zone);
  const auto warmer_c = object.number("warmer_c", {0, 30, "C"});
  const auto warmer_f = object.number("warmer_f", {0, 54, "F"});
  if (warmer_c) air.warmer = kelvins(*warmer_c);
  if (warmer_f) air.warmer = fahrenheit_degrees(*warmer_f);
  if (const auto drier = object.number("drier_pct", {0, 60, "% RH"}))
    air.drier = humidity_percent(*drier);
  if (const auto kind = object.word("heater_is", heater_kind_words))
    air.heater = static_cast<HeaterKind>(*kind);
  if (warmer_c && warmer_f) object.report("warmer_f", "wanted one of warmer_c and warmer_f");
  if (!object.has("warmer_c") && !object.has("warmer_f") && !object.has("drier_pct"))
    object.report("warmer_c", "is missing; this, warmer_f or drier_pct is needed");
  if (object.has("from") != object.has("until"))
    object.report(object.has("from") ? "until" : "from",
                  "is missing; wanted both ends, or neither for the whole plan");
  if (from && until && *until <= *from) object.report("until", "wanted a time after \"from\"");
  object.refuse_unknown();
  if (object.problems().size() > before) return std::nullopt;
  if (from && until) air.time = Interval{*from, *until};
  return air;
}

}  // namespace tackfree
