#include "tackfree/export/left_over_json.hpp"

#include "tackfree/words/figures.hpp"

#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

double in_litres(Volume v) { return rounded(v.in(litres), 4); }

Json day(const std::optional<Date>& on) { return on ? Json(iso_date(*on)) : Json(nullptr); }

Json coating_left(const Job& job, const CoatingLeft& left) {
  Json object;
  object["coating"] = job.coatings.at(left.coating).name;
  object["expected_l"] = in_litres(left.expected);
  object["nine_in_ten_l"] = in_litres(left.nine_in_ten);
  Json& tins = object["tins"] = Json::array();
  for (const TinLeft& tin : left.tins) {
    Json one;
    one["left_l"] = in_litres(tin.left);
    one["opened_on"] = day(tin.opened_on);
    one["keeps_until"] = day(tin.keeps_until);
    one["too_old"] = tin.too_old;
    tins.push_back(std::move(one));
  }
  return object;
}

Json thinner_left(const ThinnerLeft& left) {
  Json object;
  object["liquid"] = left.liquid;
  object["expected_l"] = in_litres(left.expected);
  object["used_l"] = in_litres(left.used);
  return object;
}

Json waste(const Job& job, const WasteToShed& to_shed) {
  Json object;
  object["key"] = to_shed.text.key;
  object["what"] = to_shed.text.what;
  object["do"] = to_shed.text.act;
  Json& coatings = object["coatings"] = Json::array();
  for (const std::size_t coating : to_shed.coatings)
    coatings.push_back(job.coatings.at(coating).name);
  object["origin"] = word_for(to_shed.text.origin);
  object["source"] = to_shed.text.source;
  return object;
}

}  // namespace

void put_left_over(nlohmann::ordered_json& document, const Plan& plan) {
  Json& object = document["left_over"];
  Json& coatings = object["coatings"] = Json::array();
  for (const CoatingLeft& left : plan.left_over.coatings)
    coatings.push_back(coating_left(plan.job, left));
  Json& thinners = object["thinners"] = Json::array();
  for (const ThinnerLeft& left : plan.left_over.thinners) thinners.push_back(thinner_left(left));
  Json& all = object["waste"] = Json::array();
  for (const WasteToShed& each : plan.left_over.waste) all.push_back(waste(plan.job, each));
}

}  // namespace tackfree
