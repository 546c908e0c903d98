#include "tackfree/export/plan_json.hpp"

#include "tackfree/export/air_json.hpp"
#include "tackfree/export/areas_json.hpp"
#include "tackfree/export/figures_json.hpp"
#include "tackfree/export/fumes_json.hpp"
#include "tackfree/export/json_text.hpp"
#include "tackfree/export/json_values.hpp"
#include "tackfree/export/left_over_json.hpp"
#include "tackfree/export/schedule_json.hpp"
#include "tackfree/words/caution_words.hpp"
#include "tackfree/words/figures.hpp"
#include "tackfree/words/note_words.hpp"
#include "tackfree/words/step_words.hpp"
#include "tackfree/words/sundry_words.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

constexpr int schema_version = 1;

double m2(Area a) { return rounded(a.in(square_metres), 4); }
double l(Volume v) { return rounded(v.in(litres), 4); }
double um(FilmThickness f) { return rounded(f.in(micrometres), 1); }

constexpr std::array<std::string_view, 3> wear_words{"light", "normal", "hard"};
constexpr std::array<std::string_view, 3> verdict_words{"good", "thin", "thick"};
constexpr std::array<std::string_view, 3> unit_words{"sheets", "pieces", "m"};

template <std::size_t N, class Enum>
std::string_view word_of(const std::array<std::string_view, N>& words, Enum value) {
  return words.at(static_cast<std::size_t>(value));
}

Json job_facts(const Job& job) {
  Json object;
  object["id"] = job.id;
  object["name"] = job.name;
  object["note"] = job.note;
  constexpr std::array<std::string_view, 3> unit_systems{"metric", "us", "both"};
  object["units"] = unit_systems.at(static_cast<std::size_t>(job.units));
  object["zone"] = job.calendar.zone.name();
  object["grid_min"] = job.grid.count();
  object["horizon_d"] = rounded(job.horizon.in(days), 3);
  object["aim"] = job.aim == Aim::ready ? "ready" : "sessions";
  object["faster_than_label"] = job.faster_than_label;
  return object;
}

Json batches(const Job& job) {
  Json array = Json::array();
  for (const Batch& batch : job.batches) {
    const FinishSystem* system = find_named(job.systems, batch.system);
    Json object;
    object["name"] = batch.name;
    object["system"] = batch.system;
    object["wear"] = system == nullptr ? Json(nullptr) : Json(word_of(wear_words, system->wear));
    object["sides"] = batch.sides == Sides::on_points ? "on_points" : "turn_over";
    array.push_back(std::move(object));
  }
  return array;
}

Json coats(const Plan& plan) {
  Json array = Json::array();
  for (std::size_t i = 0; i < plan.volumes.coats.size(); ++i) {
    const CoatNeed& need = plan.volumes.coats[i];
    Json object;
    object["batch"] = plan.job.batches.at(need.batch).name;
    object["step"] = step_name(plan.job, plan.job.batches.at(need.batch), need.step);
    object["coat"] = need.coat;
    object["side"] = word_for(need.side);
    object["area_m2"] = m2(need.area);
    object["mixed_l"] = l(need.mixed);
    object["coating_l"] = l(need.coating);
    object["thinner_l"] = l(need.thinner);
    for (const CoatEmission& emission : plan.emissions)
      if (emission.need == i) object["solvent_g"] = rounded(emission.solvent.in(grams), 1);
    array.push_back(std::move(object));
  }
  return array;
}

Json films(const Plan& plan) {
  Json array = Json::array();
  for (const StepFilm& film : plan.volumes.films) {
    Json object;
    object["batch"] = plan.job.batches.at(film.batch).name;
    object["step"] = step_name(plan.job, plan.job.batches.at(film.batch), film.step);
    object["coats"] = film.build.coats;
    object["coats_fixed"] = film.coats_fixed;
    object["wet_um"] = um(film.build.wet);
    object["first_dry_um"] = um(film.build.first_dry);
    object["later_dry_um"] = um(film.build.later_dry);
    object["counted_dry_um"] = um(film.build.counted_dry);
    object["aim_um"] = um(film.aim);
    object["cap_um"] = um(film.cap);
    object["verdict"] = word_of(verdict_words, film.verdict);
    array.push_back(std::move(object));
  }
  return array;
}

Json tins(const TinPurchase& purchase) {
  Json array = Json::array();
  for (std::size_t i = 0; i < purchase.sizes.size(); ++i) {
    const TinSize& size = purchase.sizes[i];
    Json object;
    object["size"] = size.label;
    object["volume_l"] = l(size.volume);
    object["price"] = size.price ? Json(rounded(*size.price, 4)) : Json(nullptr);
    object["count"] = i < purchase.tins.counts.size() ? purchase.tins.counts[i] : 0;
    array.push_back(std::move(object));
  }
  return array;
}

Json too_old(const TinPurchase& bought) {
  Json array = Json::array();
  for (const ShelfTin& tin : bought.too_old) {
    Json object;
    object["volume_l"] = l(tin.volume);
    object["opened_on"] = iso_date(*tin.opened_on);
    array.push_back(std::move(object));
  }
  return array;
}

/// What coatings and thinners have in common, after what is their own.
void put_tins(Json& object, const TinPurchase& bought) {
  object["expected_l"] = l(bought.expected);
  object["nine_in_ten_l"] = l(bought.nine_in_ten);
  object["on_shelf_l"] = l(bought.on_shelf);
  object["bought_l"] = l(bought.tins.bought);
  object["left_over_l"] = l(bought.left_over);
  object["cost"] = bought.tins.priced ? Json(rounded(bought.tins.cost, 4)) : Json(nullptr);
  object["usual_sizes"] = bought.usual_sizes;
  object["tins"] = tins(bought);
}

Json purchase(const Plan& plan, const CoatingPurchase& bought) {
  Json object;
  object["coating"] = plan.job.coatings.at(bought.coating).name;
  object["on_surfaces_l"] = l(bought.on_surfaces);
  object["kept_by_tools_l"] = l(bought.kept_by_tools);
  object["sessions"] = bought.sessions;
  put_tins(object, bought);
  object["too_old"] = too_old(bought);
  return object;
}

Json purchase(const ThinnerPurchase& bought) {
  Json object;
  object["liquid"] = bought.liquid;
  object["to_thin_l"] = l(bought.to_thin);
  object["to_clean_l"] = l(bought.to_clean);
  object["sessions"] = bought.sessions;
  put_tins(object, bought);
  return object;
}

Json shopping(const Plan& plan) {
  Json object;
  Json& coatings = object["coatings"] = Json::array();
  for (const CoatingPurchase& bought : plan.shopping.coatings)
    coatings.push_back(purchase(plan, bought));
  Json& thinners = object["thinners"] = Json::array();
  for (const ThinnerPurchase& bought : plan.shopping.thinners) thinners.push_back(purchase(bought));
  Json& sundries = object["sundries"] = Json::array();
  const Figures figures(plan.job);
  for (const Sundry& sundry : plan.shopping.sundries) {
    const SundryText text = sundry_text(sundry, plan.job, figures);
    Json item;
    item["what"] = text.what;
    item["amount"] = rounded(text.amount, 4);
    item["unit"] = word_of(unit_words, sundry.unit());
    item["why"] = text.why;
    item["origin"] = word_for(sundry.origin);
    sundries.push_back(std::move(item));
  }
  return object;
}

Json cautions(const Plan& plan) {
  Json array = Json::array();
  for (const Caution& caution : caution_texts(plan)) {
    Json object;
    object["key"] = caution.key;
    object["word"] = caution.word;
    object["hazard"] = caution.hazard;
    object["consequence"] = caution.consequence;
    object["avoid"] = caution.avoid;
    object["origin"] = word_for(caution.origin);
    object["source"] = caution.source;
    array.push_back(std::move(object));
  }
  return array;
}

Json notes(const Plan& plan) {
  const Figures figures(plan.job);
  Json array = Json::array();
  for (const Note& note : plan.notes)
    array.push_back(
        {{"about", subject_of(note)}, {"text", note_text(note, plan.job, plan.list, figures)}});
  return array;
}

}  // namespace

std::string json_shopping_list(const Plan& plan) {
  Json document;
  document["tackfree_buy"] = schema_version;
  document["job"] = job_facts(plan.job);
  put_instant(document, "now", plan.now, plan.job.calendar.zone);
  document["unplaced_steps"] = plan.schedule.unplaced.size();
  document["shopping"] = shopping(plan);
  put_figures(document, plan);
  document["deference"] = plan.job.data.texts.deference;
  return json_text(document);
}

std::string json_report(const Plan& plan) {
  const Zone& zone = plan.job.calendar.zone;
  Json document;
  document["tackfree_plan"] = schema_version;
  document["job"] = job_facts(plan.job);
  put_instant(document, "now", plan.now, zone);
  put_instant(document, "ready", plan.schedule.ready_at, zone);
  put_proof(document, plan.schedule, zone);
  put_instant(document, "horizon", plan.schedule.span.end, zone);
  document["batches"] = batches(plan.job);
  put_areas(document, plan.job, plan.takeoff);
  document["coats"] = coats(plan);
  document["films"] = films(plan);
  put_schedule(document, plan);
  put_work(document, plan);
  put_calendar(document, plan);
  document["shopping"] = shopping(plan);
  put_left_over(document, plan);
  put_air(document, plan);
  put_fumes(document, plan);
  put_ignition(document, plan);
  document["cautions"] = cautions(plan);
  document["notes"] = notes(plan);
  put_figures(document, plan);
  document["deference"] = plan.job.data.texts.deference;
  return json_text(document);
}

}  // namespace tackfree
