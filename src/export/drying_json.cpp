#include "tackfree/export/drying_json.hpp"

#include "tackfree/export/json_text.hpp"
#include "tackfree/export/json_values.hpp"
#include "tackfree/words/figures.hpp"
#include "tackfree/words/step_words.hpp"

#include <array>
#include <string_view>

#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

Json factor_json(const TimeFactor& factor) {
  return {{"value", rounded(factor.value, 4)},
          {"origin", word_for(factor.origin)},
          {"source", factor.source}};
}

Json gate_json(const Job& job, const CoatOutlook& outlook, const GateAt& gate) {
  Json object;
  put_gate(object, job, job.coatings.at(outlook.coating), gate.gate);
  put_instant(object, "opens", gate.opens, job.calendar.zone);
  return object;
}

}  // namespace

Json explanation_json(const DryingExplanation& why, const Zone& zone) {
  Json object;
  object["stage"] = key_for(why.stage);
  object["label_h"] = {{"value", rounded(why.label.value.in(hours), 4)},
                       {"origin", word_for(why.label.origin)},
                       {"source", why.label.source}};
  if (why.label_least) object["label_least_h"] = rounded(why.label_least->in(hours), 4);
  object["temperature"] = factor_json(why.temperature);
  object["humidity"] = factor_json(why.humidity);
  object["film"] = factor_json(why.film);
  object["air_movement"] = factor_json(why.air_movement);
  if (why.slowness.value != 1.0) object["slowness"] = factor_json(why.slowness);
  object["held"] = factor_json(why.held);
  object["outside_label_pct"] = rounded(why.outside_label * 100, 1);
  object["wait_h"] = rounded(why.wait().in(hours), 4);
  put_instant(object, "begins", why.begins, zone);
  put_instant(object, "ends", why.ends, zone);
  return object;
}

std::string outlook_json(const Job& job, const CoatOutlook& outlook) {
  constexpr std::array<std::string_view, 3> risks{"none", "some", "high"};
  const Zone& zone = job.calendar.zone;
  Json document;
  document["tackfree_drying"] = 1;
  document["coating"] = job.coatings.at(outlook.coating).name;
  put_instant(document, "applied", outlook.applied, zone);
  document["putting_on_min"] = outlook.putting_on.count();
  document["temp_c"] = rounded(outlook.air.temperature.in_celsius(), 2);
  document["humidity_pct"] = rounded(outlook.humidity.in(humidity_percent), 1);
  document["dew_point_c"] = rounded(outlook.dew_point.in_celsius(), 2);
  document["boards_c"] = rounded(outlook.surface.in_celsius(), 2);
  document["wood_moisture_pct"] = rounded(outlook.wood_moisture.in(percent), 1);
  Json& stages = document["stages"] = Json::array();
  for (const DryingExplanation& why : outlook.stages) stages.push_back(explanation_json(why, zone));
  Json& never = document["not_within_horizon"] = Json::array();
  for (const Stage stage : outlook.never) never.push_back(key_for(stage));
  Json& gates = document["gates"] = Json::array();
  for (const GateAt& gate : outlook.gates) gates.push_back(gate_json(job, outlook, gate));
  put_instant(document, "all_open", outlook.all_open, zone);
  put_instant(document, "best",
              outlook.best ? std::optional(outlook.best->at) : std::optional<Instant>(), zone);
  document["best_wait_h"] =
      outlook.best ? Json(rounded(outlook.best->wait.in(hours), 2)) : Json(nullptr);
  put_instant(document, "recoat_unsanded_until", outlook.recoat_unsanded_until, zone);
  document["blush_risk"] =
      outlook.blush ? Json(risks.at(static_cast<std::size_t>(*outlook.blush))) : Json(nullptr);
  put_instant(document, "typical_from", outlook.typical_from, zone);
  document["deference"] = job.data.texts.deference;
  return json_text(document);
}

}  // namespace tackfree
