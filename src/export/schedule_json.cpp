#include "tackfree/export/schedule_json.hpp"

#include "tackfree/export/drying_json.hpp"
#include "tackfree/export/event_revisions.hpp"
#include "tackfree/export/json_values.hpp"
#include "tackfree/plan/due_dates.hpp"
#include "tackfree/plan/recoat_slack.hpp"
#include "tackfree/words/figures.hpp"
#include "tackfree/words/how_lines.hpp"
#include "tackfree/words/remedy_words.hpp"
#include "tackfree/words/step_words.hpp"
#include "tackfree/words/unplaced_words.hpp"
#include "tackfree/words/work_entries.hpp"

#include <algorithm>
#include <string>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

std::string_view key_for(HeldBy by) {
  switch (by) {
    case HeldBy::now:
      return "now";
    case HeldBy::previous_step:
      return "previous_step";
    case HeldBy::drying:
      return "drying";
    case HeldBy::air:
      return "air";
    case HeldBy::calendar:
      return "calendar";
    case HeldBy::quiet_hours:
      return "quiet_hours";
    case HeldBy::person:
      return "person";
    case HeldBy::dust:
      return "dust";
    case HeldBy::last_plan:
      return "last_plan";
    case HeldBy::order:
      return "order";
    case HeldBy::coats_a_day:
      return "coats_a_day";
    case HeldBy::pin:
      return "pin";
    case HeldBy::no_coating_day:
      return "no_coating_day";
    case HeldBy::not_before:
      return "not_before";
    case HeldBy::due:
      return "due";
    case HeldBy::space:
      return "space";
  }
  return "now";
}

Json interval(const Interval& span, const Zone& zone) {
  Json object;
  put_instant(object, "begin", span.begin, zone);
  put_instant(object, "end", span.end, zone);
  return object;
}

/// What is done: members that do not depend on the schedule.
Json operation(const Plan& plan, const StepWords& words, const Operation& op) {
  const Job& job = plan.job;
  Json object;
  object["key"] = op.key;
  object["kind"] = word_for(op.kind);
  object["title"] = words.title(op);
  object["batch"] = job.batches.at(op.batch).name;
  object["coat"] = op.coat;
  object["side"] = word_for(op.side);
  object["work_min"] = rounded(op.work.in(minutes), 1);
  object["area_m2"] = rounded(op.area.in(square_metres), 4);
  if (op.grit) {
    object["grit_p"] = op.grit->p;
    object["power_sanding"] = op.power_sanding;
    object["sheets"] = rounded(op.sheets, 2);
  }
  if (op.kind == OperationKind::coat) {
    object["coats"] = op.coats;
    if (op.coating) object["coating"] = job.coatings.at(*op.coating).name;
    if (op.method) object["method"] = job.data.methods.at(*op.method).key;
    object["mixed_l"] = rounded(op.mixed.in(litres), 4);
    object["coating_l"] = rounded(op.liquid.in(litres), 4);
    object["thinner_l"] = rounded(op.thinner.in(litres), 4);
    object["film_ratio"] = rounded(op.film_ratio, 4);
    object["whole_film_ratio"] = rounded(op.whole_film, 4);
    if (op.pots > 0) object["pots"] = op.pots;
    if (op.portions > 0) object["portions"] = op.portions;
  }
  return object;
}

Json held_reasons(const Plan& plan, const DatedStep& step) {
  const Operation& op = plan.list.operations.at(step.operation);
  Json reasons = Json::array();
  for (const Held& held : step.held) {
    Json reason;
    reason["by"] = key_for(held.by);
    put_instant(reason, "until", held.until, plan.job.calendar.zone);
    if (held.operation) reason["step"] = plan.list.operations.at(*held.operation).key;
    if (held.stage) reason["stage"] = key_for(*held.stage);
    if (held.dry_for) reason["dry_for_h"] = rounded(held.dry_for->in(hours), 2);
    if (held.films > 1) reason["films"] = held.films;
    if (held.gate && op.coating)
      put_gate(reason, plan.job, plan.job.coatings.at(*op.coating), *held.gate);
    reasons.push_back(std::move(reason));
  }
  return reasons;
}

Json dated_step(const Plan& plan, const StepWords& words, const DatedStep& step,
                const std::vector<DryingExplanation>& drying) {
  const Operation& op = plan.list.operations.at(step.operation);
  const Zone& zone = plan.job.calendar.zone;
  Json object = operation(plan, words, op);
  put_instant(object, "begin", step.begin(), zone);
  put_instant(object, "end", step.end(), zone);
  if (op.done) {
    object["done"] = true;
    object["logged"] = op.done->logged;
    object["skipped"] = op.done->skipped;
  }
  Json& pieces = object["pieces"] = Json::array();
  for (std::size_t i = 0; i < step.pieces.size(); ++i) {
    pieces.push_back(interval(step.pieces[i], zone));
    if (i < step.by.size()) pieces.back()["by"] = plan.job.people.at(step.by[i]).name;
  }
  object["held"] = held_reasons(plan, step);
  object["why"] = words.why(step, Reasons::all_with_origins);
  Json& reaches = object["reaches"] = Json::object();
  for (std::size_t stage = 0; stage < stage_count; ++stage)
    if (step.reaches.at(stage))
      put_instant(reaches, key_for(static_cast<Stage>(stage)), step.reaches.at(stage), zone);
  if (!drying.empty()) {
    Json& waits = object["drying"] = Json::array();
    for (const DryingExplanation& why : drying) waits.push_back(explanation_json(why, zone));
  }
  object["session"] = step.session ? Json(*step.session) : Json(nullptr);
  object["on_typical_air"] = step.on_typical_air;
  object["how"] = how_lines(plan, op);
  return object;
}

Json session(const Plan& plan, const Session& session) {
  const Zone& zone = plan.job.calendar.zone;
  Json object;
  object["coating"] = plan.job.coatings.at(session.coating).name;
  object["method"] = plan.job.data.methods.at(session.method).key;
  object["set_up"] = interval(session.set_up, zone);
  object["clean_up"] = interval(session.clean_up, zone);
  if (session.set_up_by) object["set_up"]["by"] = plan.job.people.at(*session.set_up_by).name;
  if (session.clean_up_by) object["clean_up"]["by"] = plan.job.people.at(*session.clean_up_by).name;
  Json& cleanings = object["cleanings"] = Json::array();
  for (const ToolRest& rest : plan.schedule.tool_rests) {
    const DatedStep& before = plan.schedule.steps.at(rest.dated_step);
    if (rest.wrapped || std::ranges::find(session.steps, rest.dated_step) == session.steps.end())
      continue;
    cleanings.push_back(interval(rest.cleaning, zone));
    if (!before.by.empty()) cleanings.back()["by"] = plan.job.people.at(before.by.front()).name;
  }
  Json& steps = object["steps"] = Json::array();
  for (const std::size_t step : session.steps)
    steps.push_back(plan.list.operations.at(plan.schedule.steps.at(step).operation).key);
  return object;
}

void put_due(Json& document, const Plan& plan) {
  Json& due = document["due"] = Json::array();
  for (const DueDate& date : due_dates(plan)) {
    Json object;
    object["batch"] = plan.job.batches.at(date.batch).name;
    put_instant(object, "due", date.due, plan.job.calendar.zone);
    put_instant(object, "ready", date.ready, plan.job.calendar.zone);
    object["in_time"] = date.in_time();
    object["late_min"] = date.late_by().count();
    Json& decided_by = object["decided_by"] = Json::array();
    for (const std::size_t step : deciding_steps(plan, date.batch))
      decided_by.push_back(plan.list.operations.at(plan.schedule.steps.at(step).operation).key);
    due.push_back(std::move(object));
  }
}

void put_unplaced(Json& document, const Plan& plan, const StepWords& words) {
  Json& unplaced = document["unplaced"] = Json::array();
  for (const Unplaced& one : plan.schedule.unplaced) {
    const Operation& op = plan.list.operations.at(one.operation);
    Json object = operation(plan, words, op);
    object["by"] = key_for(one.by);
    object["gate"] = nullptr;
    if (one.gate && op.coating)
      put_gate(object, plan.job, plan.job.coatings.at(*op.coating), *one.gate);
    object["why"] = unplaced_words(one, plan);
    object["conflict"] = conflict_words(one, plan, words.figures());
    object["work_days"] = one.work_days;
    Json& closed_days = object["closed_days"] = Json::array();
    for (const ClosedDays& closed : one.closed)
      closed_days.push_back({{"by", key_for(closed.by)},
                             {"gate", closed.gate ? Json(key_for(*closed.gate)) : Json(nullptr)},
                             {"days", closed.days}});
    unplaced.push_back(std::move(object));
  }
}

void put_remedies(Json& document, const Plan& plan, const StepWords& words) {
  Json& remedies = document["remedies"] = Json::array();
  for (const Remedy& remedy : plan.remedies) {
    Json object;
    object["step"] = plan.list.operations.at(remedy.operation).key;
    put_instant(object, "begins", remedy.begins, plan.job.calendar.zone);
    put_instant(object, "ready", remedy.ready_at, plan.job.calendar.zone);
    object["say"] = remedy_words(remedy, plan, words);
    object["write"] = Json::parse("{" + remedy_key(remedy, plan.job) + "}");
    remedies.push_back(std::move(object));
  }
}

}  // namespace

void put_schedule(Json& document, const Plan& plan) {
  const StepWords words(plan);
  const Schedule& schedule = plan.schedule;
  Json& steps = document["steps"] = Json::array();
  for (std::size_t i = 0; i < schedule.steps.size(); ++i)
    steps.push_back(
        dated_step(plan, words, schedule.steps[i],
                   i < plan.drying.size() ? plan.drying[i] : std::vector<DryingExplanation>{}));
  for (const RecoatSlack& slack : recoat_slacks(plan))
    put_instant(steps.at(slack.dated_step), "unsanded_until", slack.until, plan.job.calendar.zone);
  Json& sessions = document["sessions"] = Json::array();
  for (const Session& one : schedule.sessions) sessions.push_back(session(plan, one));
  Json& milestones = document["milestones"] = Json::array();
  for (const DatedOutcome& outcome : schedule.outcomes) {
    Json milestone;
    milestone["batch"] = plan.job.batches.at(outcome.batch).name;
    milestone["stage"] = key_for(outcome.stage);
    put_instant(milestone, "reached", outcome.at, plan.job.calendar.zone);
    milestones.push_back(std::move(milestone));
  }
  put_due(document, plan);
  put_unplaced(document, plan, words);
  put_remedies(document, plan, words);
}

void put_proof(Json& object, const Schedule& schedule, const Zone& zone) {
  Json& proof = object["proof"] = nullptr;
  if (!schedule.proof) return;
  proof = Json::object();
  put_instant(proof, "ready_no_sooner_than", schedule.proof->ready_no_sooner_than, zone);
  proof["earliest_ready"] = schedule.proof->earliest_ready;
  proof["fewest_sessions"] = schedule.proof->fewest_sessions;
}

void put_calendar(Json& document, const Plan& plan) {
  Json& calendar = document["calendar"] = Json::array();
  for (const EventState& event : calendar_states(plan)) {
    Json object = interval(event.time, plan.job.calendar.zone);
    object["uid"] = event.uid;
    object["summary"] = event.summary;
    object["category"] = event.category;
    object["content"] = event.content;
    object["sequence"] = event.sequence;
    object["cancelled"] = event.cancelled;
    if (!event.person.empty()) object["person"] = event.person;
    calendar.push_back(std::move(object));
  }
}

void put_work(Json& document, const Plan& plan) {
  Json& work = document["work"];
  work["in_all_min"] = plan.work.in_all.count();
  work["without_time_min"] = rounded(plan.work.without_time.in(minutes), 1);
  Json& kinds = work["kinds"] = Json::array();
  for (const WorkOfKind& each : plan.work.kinds)
    kinds.push_back({{"kind", words_for(each.kind)}, {"work_min", each.work.count()}});
  Json& by_day = work["days"] = Json::array();
  for (const WorkOfDay& day : plan.work.days)
    by_day.push_back({{"on", iso_date(day.on)}, {"work_min", day.work.count()}});
}

}  // namespace tackfree
