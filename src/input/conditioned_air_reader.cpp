#include "tackfree/input/conditioned_air_reader.hpp"

#include "tackfree/input/calendar_reader.hpp"

#include <string>
#include <string_view>

namespace tackfree {

namespace {

std::optional<Instant> read_end(JsonCursor& object, std::string_view key, const Zone& zone) {
  const auto text = object.text(JsonKey(key));
  if (!text) return std::nullopt;
  const auto local = parse_local_time(*text);
  if (local && parse_planning_date(iso_date(local->on))) return zone.instant(*local);
  object.report(key, "wanted a local time from 1970 to 2037, such as \"2027-04-24T18:00\"");
  return std::nullopt;
}

}  // namespace

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
