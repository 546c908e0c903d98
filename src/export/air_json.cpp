#include "tackfree/export/air_json.hpp"

#include "tackfree/export/json_values.hpp"
#include "tackfree/words/air_words.hpp"
#include "tackfree/words/figures.hpp"

#include <array>
#include <string_view>
#include <variant>

#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

Json source(const AirSource& source) {
  constexpr std::array<std::string_view, 4> kinds{"constant", "rows", "days", "months"};
  Json object;
  object["name"] = source.name;
  object["kind"] = kinds.at(source.what.index());
  if (const auto* rows = std::get_if<AirRows>(&source.what)) {
    object["file"] = rows->file;
    object["measured_by"] = rows->origin;
    object["recorded_in"] = rows->recorded_in ? Json(*rows->recorded_in) : Json(nullptr);
  } else if (const auto* days = std::get_if<AirDays>(&source.what)) {
    object["measured_by"] = days->origin;
  } else if (const auto* months = std::get_if<AirMonths>(&source.what)) {
    object["measured_by"] = months->origin;
  } else {
    const auto& constant = std::get<ConstantAir>(source.what);
    object["temp_c"] = rounded(constant.temperature.in_celsius(), 2);
    object["humidity_pct"] = rounded(constant.humidity.in(humidity_percent), 1);
  }
  return object;
}

/// The openings that the air of the plan has in it.
Json openings_in_air(const Plan& plan) {
  if (!plan.aired) return nullptr;
  Json object;
  object["every_chance"] = plan.aired->every_chance;
  Json& openings = object["openings"] = Json::array();
  for (const FasterLoss& opening : plan.aired->openings) {
    Json one;
    put_instant(one, "begin", opening.time.begin, plan.job.calendar.zone);
    put_instant(one, "end", opening.time.end, plan.job.calendar.zone);
    one["heat_loss_times"] = rounded(opening.times, 4);
    openings.push_back(std::move(one));
  }
  return object;
}

Json indoors(const Plan& plan, const Indoors& indoors) {
  Json object;
  object["aired"] = openings_in_air(plan);
  object["time_constant_h"] = rounded(indoors.time_constant.value.in(hours), 2);
  object["time_constant_origin"] = word_for(indoors.time_constant.origin);
  if (indoors.humidity_ceiling)
    object["humidity_ceiling_pct"] = rounded(indoors.humidity_ceiling->in(humidity_percent), 1);
  if (!indoors.heating) return object;
  const Heating& heating = *indoors.heating;
  const Instant until = plan.schedule.ready_at.value_or(plan.schedule.span.end);
  Json& heat = object["heating"] = Json::object();
  heat["set_point_c"] = rounded(heating.set_point.in_celsius(), 2);
  heat["loss_w_per_k"] = rounded(heating.loss.value.in(watts_per_kelvin), 1);
  heat["loss_origin"] = word_for(heating.loss.origin);
  heat["heater_kw"] = rounded(heating.heater.value.in(kilowatts), 2);
  heat["heater_origin"] = word_for(heating.heater.origin);
  heat["energy_kwh"] = rounded(plan.air.heat_until(until).in(kilowatt_hours), 1);
  put_instant(heat, "energy_until", until, plan.job.calendar.zone);
  return object;
}

Json conditioned(const ConditionedAir& air, const Zone& zone) {
  Json object;
  const auto end = [&](Instant Interval::*which) {
    return air.time ? std::optional((*air.time).*which) : std::nullopt;
  };
  put_instant(object, "begin", end(&Interval::begin), zone);
  put_instant(object, "end", end(&Interval::end), zone);
  object["warmer_k"] = rounded(air.warmer.in(kelvins), 2);
  object["drier_pct"] = rounded(air.drier.in(humidity_percent), 1);
  object["heater_is"] = air.heater
                            ? Json(heater_kind_words.at(static_cast<std::size_t>(*air.heater)))
                            : Json(nullptr);
  return object;
}

void put_mix(Json& object, const Plan& plan, const AirMix& mix) {
  object["kind"] = "mix";
  Json& sources = object["sources"] = Json::array();
  for (const AirSource& one : mix.sources) sources.push_back(source(one));
  Json& seams = object["seams"] = Json::array();
  for (const AirSeam& seam : plan.air.seams()) {
    Json one;
    put_instant(one, "changes", seam.at, plan.job.calendar.zone);
    one["before"] = source_words(seam.before);
    one["after"] = source_words(seam.after);
    seams.push_back(std::move(one));
  }
  if (mix.indoors) object["indoors"] = indoors(plan, *mix.indoors);
  for (const ConditionedAir& each : mix.conditioned)
    object["conditioned"].push_back(conditioned(each, plan.job.calendar.zone));
  if (!mix.boards) return;
  Json& boards = object["boards"] = Json::object();
  boards["thickness_mm"] = rounded(mix.boards->thickness.in(millimetres), 1);
  boards["from"] = mix.boards->from_outdoors ? "outdoors" : "room";
  boards["lag_min"] = rounded(plan.board_lag.in(minutes), 1);
}

Json air(const Plan& plan) {
  const Zone& zone = plan.job.calendar.zone;
  Json object;
  if (const auto* constant = std::get_if<ConstantAir>(&plan.job.air)) {
    object["kind"] = "constant";
    object["temp_c"] = rounded(constant->temperature.in_celsius(), 2);
    object["humidity_pct"] = rounded(constant->humidity.in(humidity_percent), 1);
  } else if (const auto* rows = std::get_if<AirRows>(&plan.job.air)) {
    object["kind"] = "rows";
    object["file"] = rows->file;
    object["measured_by"] = rows->origin;
    object["recorded_in"] = rows->recorded_in ? Json(*rows->recorded_in) : Json(nullptr);
  } else {
    put_mix(object, plan, std::get<AirMix>(plan.job.air));
  }
  object["air_speed_m_per_s"] = rounded(plan.job.room.air_speed.in(metres_per_second), 3);
  put_instant(object, "typical_from", plan.air.typical_from(), zone);
  Json& held_months = object["held_months"] = Json::array();
  for (const HeldMonth& held : plan.air.held_months())
    held_months.push_back({{"month", held.month}, {"held", held.held}});
  Json& bridged = object["bridged"] = Json::array();
  for (const BridgedGap& bridge : plan.air.bridged()) {
    Json gap;
    put_instant(gap, "begin", bridge.gap.begin, zone);
    put_instant(gap, "end", bridge.gap.end, zone);
    bridged.push_back(std::move(gap));
  }
  object["wood_moisture_pct"] = rounded(plan.wood_moisture.in(percent), 1);
  return object;
}

}  // namespace

void put_air(Json& document, const Plan& plan) { document["air"] = air(plan); }

}  // namespace tackfree
