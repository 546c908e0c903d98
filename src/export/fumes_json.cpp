#include "tackfree/export/fumes_json.hpp"

#include "tackfree/export/json_values.hpp"
#include "tackfree/words/figures.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <array>
#include <string_view>

#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<std::string_view, 4> opening_keys{"closed", "ajar", "open", "open_and_fan"};
constexpr std::array<std::string_view, vapour_limit_count> limit_keys{
    "quarter_of_explosive_limit", "tenth_of_explosive_limit", "exposure_15_min", "exposure_8_h"};
constexpr std::array<std::string_view, 2> verdicts{"enough", "too_little"};

std::string_view word(Opening opening) {
  return opening_keys.at(static_cast<std::size_t>(opening));
}

Json habit_object(const AiringHabit& habit) {
  Json object;
  object["while_coating"] = word(habit.while_coating);
  object["after"] = {{"state", word(habit.after)},
                     {"hours", rounded(habit.after_for.in(hours), 2)}};
  return object;
}

template <class T>
Json figure(const Sourced<T>& from, double value) {
  Json object;
  object["value"] = value;
  object["origin"] = word_for(from.origin);
  object["source"] = from.source;
  return object;
}

double mg(MassPerVolume m) { return rounded(m.in(milligrams_per_cubic_metre), 1); }

Json solvent_object(const Solvent& solvent) {
  Json object;
  object["solvent"] = solvent.key;
  object["limits_by"] = solvent.limits_by;
  object["explosive_limit_pct"] =
      figure(solvent.explosive_limit, rounded(solvent.explosive_limit.value.in(percent), 3));
  object["limit_8h_mg_per_m3"] = figure(solvent.limit_8h, mg(solvent.limit_8h.value));
  object["limit_15min_mg_per_m3"] =
      solvent.limit_15min ? figure(*solvent.limit_15min, mg(solvent.limit_15min->value)) : Json();
  object["release_per_h"] = figure(solvent.release, rounded(solvent.release.value.in(per_hour), 4));
  return object;
}

Json changes_object(const Plan& plan) {
  Json object;
  for (const Opening opening : {Opening::closed, Opening::ajar, Opening::open}) {
    const ChangeRate rate = working_changes(plan.job.room, plan.job.data.air_changes, opening);
    object[word(opening)] = rounded(rate.in(per_hour), 3);
  }
  const ChangeRate fan =
      working_changes(plan.job.room, plan.job.data.air_changes, Opening::open_and_fan);
  object[word(Opening::open_and_fan)] =
      plan.job.room.fan ? Json(rounded(fan.in(per_hour), 3)) : Json(nullptr);
  return object;
}

Json limit_objects(const RoomJudgement& room, const Zone& zone) {
  Json array = Json::array();
  for (std::size_t i = 0; i < vapour_limit_count; ++i) {
    const LimitJudgement& limit = room.limits.at(i);
    Json object;
    object["limit"] = limit_keys.at(i);
    object["of_limit"] = rounded(limit.share, 4);
    put_instant(object, "highest", limit.at, zone);
    object["least_flow_m3_per_h"] =
        limit.least_flow ? Json(rounded(limit.least_flow->in(cubic_metres_per_hour), 1))
                         : Json(nullptr);
    array.push_back(std::move(object));
  }
  return array;
}

Json stretch_object(const Plan& plan, const StretchJudgement& stretch) {
  const Zone& zone = plan.job.calendar.zone;
  Json object;
  Json& steps = object["steps"] = Json::array();
  for (const std::size_t step : stretch.steps)
    steps.push_back(plan.list.operations.at(plan.schedule.steps.at(step).operation).key);
  put_instant(object, "begin", stretch.coating.begin, zone);
  put_instant(object, "end", stretch.coating.end, zone);
  object["solvent_g"] = rounded(stretch.solvent.in(grams), 1);
  Json& airing = object["airing"] = Json::array();
  for (const AiringSpan& span : stretch.airing) {
    Json one;
    one["state"] = word(span.opening);
    put_instant(one, "begin", span.time.begin, zone);
    put_instant(one, "end", span.time.end, zone);
    airing.push_back(std::move(one));
  }
  put_instant(
      object, "airing_from_before_ends",
      stretch.airing_goes_on ? std::optional(stretch.airing_goes_on->time.end) : std::nullopt,
      zone);
  object["explosive_share_pct"] = rounded(100 * stretch.explosive_share, 3);
  object["of_15_min_limit"] = rounded(stretch.fifteen_minutes, 4);
  object["of_8_h_limit"] = rounded(stretch.eight_hours, 4);
  put_instant(object, "under_8_h_limit", stretch.under_limit_at, zone);
  put_instant(object, "under_tenth", stretch.under_tenth_at, zone);
  object["rises_again"] = stretch.rises_again;
  return object;
}

Json hours_object(const Interval& hours, const Zone& zone) {
  Json object;
  put_instant(object, "begin", hours.begin, zone);
  put_instant(object, "end", hours.end, zone);
  return object;
}

}  // namespace

void put_ignition(Json& document, const Plan& plan) {
  const Zone& zone = plan.job.calendar.zone;
  Json object;
  object["off"] = to_switch_off(plan.job);
  Json& flammable = object["flammable"] = Json::array();
  for (const FlammableTime& time : plan.flammable)
    flammable.push_back(hours_object(time.time, zone));
  const auto& clash = plan.heater_clash;
  object["heater_is"] = clash && clash->kind
                            ? Json(heater_kind_words.at(static_cast<std::size_t>(*clash->kind)))
                            : Json(nullptr);
  Json& clashes = object["heater_clashes"] = Json::array();
  if (clash)
    for (const Interval& each : clash->hours) clashes.push_back(hours_object(each, zone));
  document["ignition"] = std::move(object);
}

void put_fumes(Json& document, const Plan& plan) {
  if (!plan.room) {
    document["fumes"] = nullptr;
    return;
  }
  const RoomJudgement& room = *plan.room;
  Json object;
  object["room_m3"] = rounded(plan.job.room.volume->in(cubic_metres), 3);
  object["stops"] = room.stops();
  const auto signal = signal_word(room);
  object["word"] = signal ? Json(*signal) : Json(nullptr);
  object["habit_given"] = room.habit_given;
  object["habit"] = habit_object(room.habit);
  object["verdict"] = verdicts.at(static_cast<std::size_t>(room.verdict));
  object["proposed"] = room.proposed ? habit_object(*room.proposed) : Json(nullptr);
  Json& uncounted = object["not_counted"] = Json::array();
  for (const Uncounted each : room.uncounted) uncounted.push_back(key_of(each));
  object["working_air_changes_per_h"] = changes_object(plan);
  object["least_flow_mixing"] = room.flow_mixing;
  object["limits"] = limit_objects(room, plan.job.calendar.zone);
  Json& stretches = object["airings"] = Json::array();
  for (const StretchJudgement& stretch : room.stretches)
    stretches.push_back(stretch_object(plan, stretch));
  Json& cold = object["coldest_airing"] = nullptr;
  if (plan.cold_airing)
    cold = {{"at", iso_utc(plan.cold_airing->at)},
            {"room_c", rounded(plan.cold_airing->room.in_celsius(), 1)},
            {"bears_c", rounded(plan.cold_airing->bears.in_celsius(), 1)},
            {"dew_at", iso_utc(plan.cold_airing->dew_at)},
            {"over_dew_point_k", rounded(plan.cold_airing->spread.in(kelvins), 1)},
            {"dew_margin_k", rounded(plan.cold_airing->margin.in(kelvins), 1)},
            {"with_airing", plan.cold_airing->with_airing}};
  Json& solvents = object["solvents"] = Json::array();
  for (const std::size_t solvent : room.solvents)
    solvents.push_back(solvent_object(plan.job.data.solvents.at(solvent)));
  document["fumes"] = std::move(object);
}

}  // namespace tackfree
