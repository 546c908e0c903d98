#include "tackfree/export/last_plan_json.hpp"

#include "tackfree/export/event_revisions.hpp"
#include "tackfree/export/json_text.hpp"
#include "tackfree/words/step_words.hpp"

#include <utility>

#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

constexpr int kept_version = 1;

void put_time(Json& object, const Interval& time) {
  object["begin_at"] = iso_utc(time.begin);
  object["end_at"] = iso_utc(time.end);
}

/// Under the keys of the whole plan's JSON, so that one reader takes both.
Json last_plan_json(const LastPlan& plan) {
  Json object;
  object["job"]["id"] = plan.job_id;
  object["now_at"] = iso_utc(plan.now);
  object["ready_at"] = plan.ready_at ? Json(iso_utc(*plan.ready_at)) : Json(nullptr);
  Json& steps = object["steps"] = Json::array();
  for (const LastStep& step : plan.steps) {
    Json& one = steps.emplace_back();
    one["key"] = step.key;
    one["title"] = step.title;
    put_time(one, step.time);
    if (step.done) one["done"] = true;
  }
  Json& events = object["calendar"] = Json::array();
  for (const EventState& event : plan.events) {
    Json& one = events.emplace_back();
    one["uid"] = event.uid;
    put_time(one, event.time);
    one["summary"] = event.summary;
    one["category"] = event.category;
    one["content"] = event.content;
    one["sequence"] = event.sequence;
    if (event.cancelled) one["cancelled"] = true;
    if (!event.person.empty()) one["person"] = event.person;
  }
  return object;
}

}  // namespace

LastPlan as_last_plan(const Plan& plan) {
  const StepWords words(plan);
  LastPlan last{plan.job.id, plan.now, plan.schedule.ready_at, {}, calendar_states(plan)};
  for (const DatedStep& step : plan.schedule.steps) {
    const Operation& op = plan.list.operations.at(step.operation);
    last.steps.push_back(
        {op.key, words.title(op), {step.begin(), step.end()}, op.done.has_value()});
  }
  return last;
}

std::string kept_plan_json(const Plan& plan, const std::string& digest) {
  Json document;
  document["tackfree_kept_plan"] = kept_version;
  document["digest"] = digest;
  document["plan"] = last_plan_json(as_last_plan(plan));
  document["before"] = plan.job.last_plan ? last_plan_json(*plan.job.last_plan) : Json(nullptr);
  return json_text(document);
}

}  // namespace tackfree
