#include "tackfree/export/choices_json.hpp"

#include "tackfree/export/json_text.hpp"
#include "tackfree/export/json_values.hpp"
#include "tackfree/export/schedule_json.hpp"

#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

}  // namespace

std::string choices_json(const Choices& choices) {
  constexpr int schema_version = 1;
  const Way& first = choices.ways.front();
  const Zone& zone = first.job.calendar.zone;
  Json document;
  document["tackfree_choices"] = schema_version;
  document["job"] = {{"id", first.job.id}, {"name", first.job.name}, {"note", first.job.note}};
  put_instant(document, "now", first.now, zone);
  Json& array = document["choices"] = Json::array();
  for (const Way& way : choices.ways) {
    Json object;
    put_instant(object, "ready", way.schedule.ready_at, zone);
    object["sessions"] = way.schedule.sessions.size();
    object["work_days"] = way.work.days.size();
    object["work_min"] = way.work.in_all.count();
    put_proof(object, way.schedule, zone);
    array.push_back(std::move(object));
  }
  document["none_fewer_proved"] = choices.none_fewer;
  document["deference"] = first.job.data.texts.deference;
  return json_text(document);
}

}  // namespace tackfree
