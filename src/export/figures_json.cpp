#include "tackfree/export/figures_json.hpp"

#include "tackfree/words/figures.hpp"

#include <array>
#include <set>
#include <string>
#include <string_view>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

template <class T>
Json figure(const Sourced<T>& from, Json value) {
  Json object;
  object["value"] = std::move(value);
  object["origin"] = word_for(from.origin);
  object["source"] = from.source;
  return object;
}

/// A figure of a kind that has units, in one of them, with three decimals.
template <class Kind>
Json figure(const Sourced<Quantity<Kind>>& from, const Unit<Kind>& unit) {
  return figure(from, rounded(from.value.in(unit), 3));
}

Json figure(const Sourced<double>& from) { return figure(from, rounded(from.value, 4)); }
Json figure(const Sourced<int>& from) { return figure(from, from.value); }
Json figure(const Sourced<Temperature>& from) {
  return figure(from, rounded(from.value.in_celsius(), 2));
}
Json figure(const Sourced<Grit>& from) { return figure(from, from.value.p); }
Json figure(const Sourced<std::vector<Grit>>& from) {
  Json grits = Json::array();
  for (const Grit grit : from.value) grits.push_back(grit.p);
  return figure(from, std::move(grits));
}

Json film_figures(const Coating& coating) {
  Json object;
  object["solids_pct"] = figure(coating.solids, percent);
  object["spread_m2_per_l"] = figure(coating.spread, square_metres_per_litre);
  if (coating.spread_later)
    object["spread_later_m2_per_l"] = figure(*coating.spread_later, square_metres_per_litre);
  object["bare_factor"] = figure(coating.bare_factor);
  object["coats_min"] = figure(coating.coats_min);
  object["coats_max"] = figure(coating.coats_max);
  constexpr std::array<std::string_view, 3> wears{"light", "normal", "hard"};
  object["builds_film"] = coating.builds_film;
  for (std::size_t wear = 0; coating.builds_film && wear < wears.size(); ++wear)
    object[fmt::format("film_aim_{}_um", wears.at(wear))] =
        figure(coating.film_aim.at(wear), micrometres);
  if (coating.builds_film) object["film_cap_um"] = figure(coating.film_cap, micrometres);
  if (coating.builds_film)
    object["lost_to_sanding_um"] = figure(coating.lost_to_sanding, micrometres);
  object["first_coat_thinner_pct"] = figure(coating.first_coat_thinner, percent);
  if (coating.spray_thinner_of_mix)
    object["spray_thinner_of_mix_pct"] = figure(*coating.spray_thinner_of_mix, percent);
  object["volatiles_g_per_l"] = figure(coating.volatiles, grams_per_litre);
  object["thinner_volatiles_g_per_l"] = figure(coating.thinner_volatiles, grams_per_litre);
  if (coating.flash_point) object["flash_point_c"] = figure(*coating.flash_point);
  return object;
}

Json drying_figures(const Coating& coating) {
  constexpr std::array<std::string_view, stage_count> stages{"dust_free", "touch", "handle",
                                                             "recoat",    "sand",  "light_use",
                                                             "hardware",  "stack", "full_cure"};
  const DryingLaw& law = coating.law;
  Json object;
  object["law"] = law.name;
  object["label_temp_c"] = rounded(coating.label_temperature.in_celsius(), 2);
  object["label_humidity_pct"] = rounded(coating.label_humidity.in(humidity_percent), 1);
  for (std::size_t stage = 0; stage < stage_count; ++stage)
    if (const auto& after = coating.label_after.at(stage))
      object[fmt::format("{}_after_h", stages.at(stage))] = figure(*after, hours);
  if (coating.recoat_unsanded_within)
    object["recoat_unsanded_within_h"] = figure(*coating.recoat_unsanded_within, hours);
  if (law.driver != DryingLaw::Driver::vapour_deficit && !law.q10)
    object["activation_energy_kj_per_mol"] = figure(law.activation_energy, kilojoules_per_mole);
  if (law.q10) object["q10"] = figure(*law.q10);
  object["air_exponent"] = figure(law.air_exponent);
  constexpr std::array<std::string_view, 3> depths{"touch", "recoat", "through"};
  for (std::size_t depth = 0; depth < depths.size(); ++depth)
    object[fmt::format("film_exponent_{}", depths.at(depth))] =
        figure(law.film_exponents.at(depth));
  object["stops_below_c"] = figure(law.stops_below);
  return object;
}

Json limit_figures(const CoatingLimits& limits) {
  Json object;
  object["put_on_min_c"] = figure(limits.put_on_min);
  object["put_on_max_c"] = figure(limits.put_on_max);
  object["humidity_max_pct"] = figure(limits.humidity_max, humidity_percent);
  if (limits.humidity_caution)
    object["humidity_caution_pct"] = figure(*limits.humidity_caution, humidity_percent);
  object["hold_min_c"] = figure(limits.hold_min);
  if (limits.hold_put_on_min) object["hold_put_on_min_h"] = figure(*limits.hold_put_on_min, hours);
  object["dew_point_margin_k"] = figure(limits.dew_point_margin, kelvins);
  return object;
}

Json grit_figures(const GritAdvice& grits) {
  Json object;
  object["bare_p"] = figure(grits.bare);
  object["bare_veneer_p"] = figure(grits.bare_veneer);
  if (grits.after_first) object["after_first_p"] = figure(*grits.after_first);
  if (grits.between) object["between_p"] = figure(*grits.between);
  if (grits.before_last) object["before_last_p"] = figure(*grits.before_last);
  return object;
}

Json coating_figures(const Coating& coating) {
  Json object;
  object["name"] = coating.name;
  object["class"] = coating.class_key;
  object["class_title"] = coating.class_title;
  object["film"] = film_figures(coating);
  object["drying"] = drying_figures(coating);
  object["limits"] = limit_figures(coating.limits);
  object["grits"] = grit_figures(coating.grits);
  if (coating.coats_a_day_max) object["coats_a_day_max"] = figure(*coating.coats_a_day_max);
  if (coating.pot_life) object["pot_life_h"] = figure(*coating.pot_life, hours);
  if (coating.wipe_off_after)
    object["wipe_off_after_min"] = figure(*coating.wipe_off_after, minutes);
  if (coating.wipe_off_within)
    object["wipe_off_within_min"] = figure(*coating.wipe_off_within, minutes);
  Json& mix = object["solvent_mix"] = Json::array();
  for (const SolventShare& each : coating.solvent_mix)
    mix.push_back({{"solvent", each.solvent}, {"share_pct", figure(each.share, percent)}});
  object["clean_up_min"] = figure(coating.clean_up, minutes);
  object["tin_keeps_d"] = figure(coating.tin_keeps, days);
  object["needs_sanding_between"] = coating.needs_sanding_between;
  object["thinner"] = coating.words.thinner;
  object["cleaner"] = coating.words.cleaner;
  return object;
}

Json method_figures(const Method& method) {
  Json object;
  object["key"] = method.key;
  object["title"] = method.title;
  object["transfer_pct"] = figure(method.transfer, percent);
  object["kept_by_tool_ml"] = figure(method.kept_by_tool, millilitres);
  object["rate_m2_per_h"] = figure(method.rate, square_metres_per_hour);
  object["need_sigma"] = figure(method.need_sigma);
  object["flashed_off_pct"] = figure(method.flashed_off, percent);
  return object;
}

Json labour_figures(const Labour& labour) {
  Json object;
  object["bare_tool"] = labour.bare_tool == SandingTool::machine ? "machine" : "hand";
  object["sand_bare_machine_m2_per_h"] = figure(labour.sand_bare_machine, square_metres_per_hour);
  object["sand_bare_hand_m2_per_h"] = figure(labour.sand_bare_hand, square_metres_per_hour);
  object["sand_between_m2_per_h"] = figure(labour.sand_between, square_metres_per_hour);
  object["dust_off_m2_per_h"] = figure(labour.dust_off, square_metres_per_hour);
  object["set_up_min"] = figure(labour.set_up, minutes);
  object["turn_over_min"] = figure(labour.turn_over, minutes);
  object["fit_hardware_min"] = figure(labour.fit_hardware, minutes);
  object["dust_settles_min"] = figure(labour.dust_settles, minutes);
  object["raised_grain_dries_min"] = figure(labour.raised_grain_dries, minutes);
  object["mix_pot_min"] = figure(labour.mix_pot, minutes);
  object["wipe_off_m2_per_h"] = figure(labour.wipe_off, square_metres_per_hour);
  object["fill_pores_m2_per_h"] = figure(labour.fill_pores, square_metres_per_hour);
  object["filler_dries_min"] = figure(labour.filler_dries, minutes);
  object["abrasive_bare_m2"] = figure(labour.abrasive_bare, square_metres);
  object["abrasive_between_m2"] = figure(labour.abrasive_between, square_metres);
  return object;
}

Json shop_figures(const ShopFigures& shop, UnitSystem units) {
  const auto sizes = [](const Sourced<std::vector<TinSize>>& from) {
    Json labels = Json::array();
    for (const TinSize& size : from.value) labels.push_back(size.label);
    return figure(from, std::move(labels));
  };
  const bool us = units == UnitSystem::us;
  Json object;
  object["tins"] = sizes(us ? shop.tins_us : shop.tins_metric);
  object["thinner_tins"] = sizes(us ? shop.thinner_us : shop.thinner_metric);
  object["cleaner_per_session_ml"] = figure(shop.cleaner_per_session, millilitres);
  object["cleaner_volatiles_g_per_l"] = figure(shop.cleaner_volatiles, grams_per_litre);
  object["rags_per_session"] = figure(shop.rags_per_session);
  object["sessions_per_cloth"] = figure(shop.sessions_per_cloth);
  object["dust_mask_h"] = figure(shop.dust_mask_lasts, hours);
  return object;
}

Json air_change_figures(const AirChanges& changes) {
  Json object;
  object["closed_per_h"] = figure(changes.closed, per_hour);
  object["ajar_per_h"] = figure(changes.ajar, per_hour);
  object["open_per_h"] = figure(changes.open, per_hour);
  object["most_credited_per_h"] = figure(changes.most_credited, per_hour);
  object["fan_delivers_pct"] = figure(changes.fan_delivers, percent);
  object["mixing_one_opening"] = figure(changes.mixing_one_opening);
  object["mixing_through_draft"] = figure(changes.mixing_through_draft);
  return object;
}

/// What the systems of the job ask for between two classes (rule 5).
Json pair_waits(const Job& job) {
  Json waits = Json::array();
  for (const FinishSystem& system : job.systems)
    for (std::size_t step = 1; step < system.steps.size(); ++step) {
      const Coating* under = find_named(job.coatings, system.steps[step - 1].coating);
      const Coating* over = find_named(job.coatings, system.steps[step].coating);
      const auto wait = pair_wait(job.data, *under, *over);
      if (!wait) continue;
      waits.push_back(
          {{"under", under->name}, {"over", over->name}, {"dry_for_h", figure(*wait, hours)}});
    }
  return waits;
}

}  // namespace

void put_figures(Json& document, const Plan& plan) {
  Json& coatings = document["coatings"] = Json::array();
  for (const CoatingNeed& need : plan.volumes.coatings)
    coatings.push_back(coating_figures(plan.job.coatings.at(need.coating)));
  Json& methods = document["methods"] = Json::array();
  std::set<std::size_t> listed;
  for (const Operation& op : plan.list.operations)
    if (op.method && listed.insert(*op.method).second)
      methods.push_back(method_figures(plan.job.data.methods.at(*op.method)));
  document["labour"] = labour_figures(plan.job.data.labour);
  Json& grain = document["grain"] = Json::object();
  for (std::size_t i = 0; i < grain_count; ++i) {
    grain[fmt::format("{}_first", grain_keys.at(i))] =
        figure(plan.job.data.grain_factors.at(i).first);
    grain[fmt::format("{}_second", grain_keys.at(i))] =
        figure(plan.job.data.grain_factors.at(i).second);
  }
  Json& allowances = document["allowances"] = Json::object();
  allowances["framed"] = figure(plan.job.data.allowances.framed);
  allowances["louvred"] = figure(plan.job.data.allowances.louvred);
  document["shop"] = shop_figures(plan.job.data.shop, plan.job.units);
  document["air_changes"] = air_change_figures(plan.job.data.air_changes);
  document["pair_waits"] = pair_waits(plan.job);
  Json& need = document["need"] = Json::object();
  need["absorption_sigma"] = figure(plan.job.data.need_spread.absorption_sigma);
  need["first_coat_film_share"] = figure(plan.job.data.need_spread.first_coat_film_share);
}

}  // namespace tackfree
