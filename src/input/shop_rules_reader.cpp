#include "tackfree/input/shop_rules_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/calendar_reader.hpp"
#include "tackfree/input/names_of.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/syntax/measure.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::string_view wanted_day = "wanted a date from 1970 to 2037, such as \"2027-04-24\"";

std::optional<Date> read_day(JsonCursor& object, JsonKey key) {
  const auto text = object.text(key);
  if (!text) return std::nullopt;
  const auto on = parse_planning_date(*text);
  if (!on) object.report(key.name, std::string(wanted_day));
  return on;
}

/// A local time, or a day: its begin, or its end.
enum class DayMeans { begin, end };
std::optional<Instant> read_moment(JsonCursor& object, std::string_view key, const Zone& zone,
                                   DayMeans means) {
  const auto text = object.text(key);
  if (!text) return std::nullopt;
  if (const auto on = parse_planning_date(*text))
    return zone.instant({means == DayMeans::begin ? *on : next_day(*on), 0});
  const auto local = parse_local_time(*text);
  if (local && parse_planning_date(iso_date(local->on))) return zone.instant(*local);
  object.report(key,
                "wanted a date or a local time from 1970 to 2037, such as \"2027-04-24\" or "
                "\"2027-04-24T18:00\"");
  return std::nullopt;
}

std::vector<Date> read_no_coating(JsonCursor& object) {
  std::vector<Date> days;
  for (const JsonNode* node : object.texts("no_coating_on")) {
    if (const auto on = parse_planning_date(node->text))
      days.push_back(*on);
    else
      object.report(*node, object.path_of("no_coating_on"), std::string(wanted_day));
  }
  return days;
}

std::optional<int> read_clock(JsonCursor& object, std::string_view key) {
  const auto text = object.text(key);
  if (!text) return std::nullopt;
  const auto clock = parse_clock(*text);
  if (!clock) object.report(key, "wanted a clock time, such as \"09:00\"");
  return clock;
}

/// The system's step that a pin means.
void read_pinned_step(JsonCursor& object, const FinishSystem* system, Pin& pin) {
  pin.step = object.text("step").value_or("");
  pin.coat = object.whole(needed("coat"), {1, 20, "the coat's number,"}).value_or(1);
  if (system == nullptr) return;
  const auto steps = names_of(system->steps, &SystemStep::name);
  if (pin.step.empty() && steps.size() > 1) {
    object.report("step", fmt::format("wanted the step's name: \"{}\" has {} steps", system->name,
                                      steps.size()));
    return;
  }
  const SystemStep* step = pin.step.empty() ? (steps.empty() ? nullptr : &system->steps.front())
                                            : find_named(system->steps, pin.step);
  if (step == nullptr) {
    if (!pin.step.empty())
      object.report("step", fmt::format("wanted the name of a step of \"{}\"", system->name),
                    name_hint(pin.step, steps));
    return;
  }
  pin.step = step->name;
  if (step->coats && pin.coat > *step->coats)
    object.report("coat", fmt::format("wanted a coat from 1 to {}: \"{}\" has no more",
                                      *step->coats, step->name));
}

std::vector<Pin> read_pins(JsonCursor& batch, const FinishSystem* system) {
  constexpr std::array<std::string_view, 2> pin_sides{"back", "show"};
  std::vector<Pin> pins;
  for (JsonCursor& object : batch.objects("pins")) {
    Pin pin;
    pin.line = object.line();
    read_pinned_step(object, system, pin);
    if (const auto side = object.word("side", pin_sides))
      pin.side = *side == 0 ? Side::back : Side::show;
    const auto on = read_day(object, needed("on"));
    pin.on = on.value_or(Date{});
    pin.between.begin = read_clock(object, "from").value_or(0);
    pin.between.end = read_clock(object, "to").value_or(24 * 60);
    if (pin.between.begin >= pin.between.end)
      object.report("to", "wanted a clock time after the pin's \"from\"");
    object.refuse_unknown();
    if (on) pins.push_back(pin);
  }
  return pins;
}

/// Contradictions that need no plan to be seen.
void check_rules_agree(JsonCursor& batch, const BatchRules& rules, const Zone& zone) {
  for (const Pin& pin : rules.pins) {
    const std::string day = iso_date(pin.on);
    if (std::find(rules.no_coating_on.begin(), rules.no_coating_on.end(), pin.on) !=
        rules.no_coating_on.end())
      batch.report("pins", fmt::format("wanted a coat pinned to another day: {} is a day without "
                                       "coating",
                                       day));
    if (rules.not_before &&
        zone.instant({pin.on, 0}) + Minutes(pin.between.end) <= *rules.not_before)
      batch.report("pins", fmt::format("wanted a coat pinned to a later day: {} is over before the "
                                       "batch may be begun",
                                       day));
  }
  if (rules.not_before && rules.ready_by && *rules.ready_by <= *rules.not_before)
    batch.report("ready_by", "wanted a time after the batch's \"not_before\"");
}

DryingRoom read_room_entry(JsonCursor& object) {
  DryingRoom room;
  room.line = object.line();
  room.name = object.text(needed("name")).value_or("");
  if (const auto space = object.number("drying_space_m2", {0.01, 10'000, "m2"}))
    room.space = square_metres(*space);
  room.places = object.whole("drying_places", {1, 100'000, "places"});
  if (room.space && room.places)
    object.report("drying_places", "wanted the space in m2 or in places, not in both");
  object.refuse_unknown();
  return room;
}

/// Names of rooms and people are told apart by more than case and signs.
template <class Item>
void check_own_names(JsonCursor& job, std::string_view list, const std::vector<Item>& items) {
  std::map<std::string, int> line_of;
  for (const Item& item : items) {
    if (item.name.empty() || line_of.emplace(slug(item.name), item.line).second) continue;
    job.problems().push_back({.file = job.file(),
                              .line = item.line,
                              .key = job.path_of(list),
                              .found = item.name,
                              .wanted = "wanted a name of its own; another is the same but for "
                                        "case and signs"});
  }
}

}  // namespace

SharedRules read_shared_rules(JsonCursor& job, const Zone& zone) {
  SharedRules shared{.zone = zone};
  for (JsonCursor& object : job.objects("rooms")) shared.rooms.push_back(read_room_entry(object));
  check_own_names(job, "rooms", shared.rooms);
  shared.no_coating_on = read_no_coating(job);
  shared.ready_by = read_moment(job, "ready_by", zone, DayMeans::end);
  return shared;
}

BatchRules read_batch_rules(JsonCursor& batch, const SharedRules& shared,
                            const FinishSystem* system) {
  BatchRules rules;
  rules.pins = read_pins(batch, system);
  rules.no_coating_on = read_no_coating(batch);
  rules.no_coating_on.insert(rules.no_coating_on.end(), shared.no_coating_on.begin(),
                             shared.no_coating_on.end());
  rules.not_before = read_moment(batch, "not_before", shared.zone, DayMeans::begin);
  rules.ready_by = read_moment(batch, "ready_by", shared.zone, DayMeans::end);
  if (!rules.ready_by) rules.ready_by = shared.ready_by;
  if (const auto space = batch.number("space_m2", {0.001, 10'000, "m2"}))
    rules.space = square_metres(*space);
  if (!shared.rooms.empty()) rules.room = 0;
  if (const auto name = batch.text("room")) {
    const auto names = names_of(shared.rooms, &DryingRoom::name);
    const auto found = std::find(names.begin(), names.end(), *name);
    if (found == names.end())
      batch.report("room", "wanted the name of one of the job's \"rooms\"",
                   name_hint(*name, names));
    else
      rules.room = static_cast<std::size_t>(found - names.begin());
  }
  check_rules_agree(batch, rules, shared.zone);
  return rules;
}

std::vector<Person> read_people(JsonCursor& job, const WorkCalendar& shared, NamedFiles& files) {
  std::vector<Person> people;
  for (JsonCursor& object : job.objects("people")) {
    Person person;
    person.line = object.line();
    person.name = object.text(needed("name")).value_or("");
    person.hours = read_own_hours(object, shared, files);
    object.refuse_unknown();
    people.push_back(std::move(person));
  }
  check_own_names(job, "people", people);
  if (people.size() > 9)
    job.report("people", "wanted at most nine people: this is for home makers and small shops",
               "list those whose hours matter, or plan part of the work in a job of its own");
  return people;
}

}  // namespace tackfree
