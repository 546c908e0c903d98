// A week planned on from evening to evening: what is past stays, and nothing is given away.
#include "tackfree/schedule/check_schedule.hpp"

#include <algorithm>
#include <map>
#include <string>

#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

struct Evening {
  const char* now;
  std::vector<LogEntry> lines;  ///< that come to the log
};

LogEntry air(int id, const char* at, double temperature) {
  LogEntry line = entry(id, LogKind::air, "", at);
  line.temperature = celsius(temperature);
  return line;
}

/// A late coat, a cold night, a tacky finish, a run, an extra tin.
std::vector<Evening> week() {
  LogEntry tin = entry(6, LogKind::tin, "", "2027-04-09T18:10Z");
  tin.coating = "finish";
  tin.tin = TinEvent::opened;
  tin.amount = litres(0.75);
  return {{"2027-04-05T17:00Z", {}},
          {"2027-04-06T20:20Z", {coat(1, back_1, "2027-04-06T20:10Z", 0.13)}},
          {"2027-04-07T18:05Z",
           {air(2, "2027-04-07T06:00Z", 7), thumb(3, back_1, "2027-04-07T18:00Z", false)}},
          {"2027-04-08T18:30Z",
           {thumb(4, back_1, "2027-04-08T18:20Z", true),
            fault(5, back_1, "2027-04-08T18:20Z", Fault::runs)}},
          {"2027-04-09T20:30Z", {tin, coat(7, show_1, "2027-04-09T20:15Z", 0.12)}},
          {"2027-04-10T12:00Z", {}}};
}

/// The plans of the week, each with the one before as its last plan, or each without.
std::vector<Plan> planned_week(bool with_last) {
  std::vector<Plan> plans;
  std::vector<LogEntry> log;
  for (const Evening& evening : week()) {
    log.insert(log.end(), evening.lines.begin(), evening.lines.end());
    Job job = logged_job(log);
    if (with_last && !plans.empty()) job.last_plan = as_last(plans.back());
    plans.push_back(planned_again(std::move(job), evening.now));
  }
  return plans;
}

std::map<std::string, Interval> done_in(const Plan& plan) {
  std::map<std::string, Interval> done;
  for (const DatedStep& step : plan.schedule.steps)
    if (const Operation& op = plan.list.operations[step.operation]; op.done)
      done[op.key] = {step.begin(), step.end()};
  return done;
}

TEST_CASE("nothing dated before now ever changes from plan to plan, and nothing new comes there") {
  std::map<std::string, Interval> before;
  for (const Plan& plan : planned_week(true)) {
    CAPTURE(iso_utc(plan.now));
    const auto done = done_in(plan);
    for (const auto& step : before) {
      CAPTURE(step.first);
      REQUIRE(done.contains(step.first));
      CHECK(done.at(step.first) == step.second);
    }
    for (const DatedStep& step : plan.schedule.steps)
      CHECK((plan.list.operations[step.operation].done ? step.end() <= plan.now
                                                       : step.begin() >= plan.now));
    before = done;
  }
  CHECK(before.size() > 5);
}

TEST_CASE("a last plan costs neither time nor sessions, and the plan without it is the optimum") {
  const std::vector<Plan> with = planned_week(true), without = planned_week(false);
  std::size_t kept = 0, moved = 0;
  for (std::size_t i = 0; i < with.size(); ++i) {
    CAPTURE(iso_utc(with[i].now));
    REQUIRE(without[i].schedule.proof);
    CHECK(without[i].schedule.proof->earliest_ready);
    CHECK(without[i].schedule.proof->fewest_sessions);
    CHECK(with[i].schedule.ready_at == without[i].schedule.ready_at);
    CHECK(with[i].schedule.sessions.size() == without[i].schedule.sessions.size());
    for (const DatedStep& step : with[i].schedule.steps) {
      const Operation& op = with[i].list.operations[step.operation];
      if (op.starts_last && !op.done) ++(*op.starts_last == step.begin() ? kept : moved);
    }
  }
  CHECK(kept > 5);
  CHECK(moved > 0);
}

/// All done at the usual pace but for what is to come of the last coat.
Plan with_one_coat_left() {
  std::vector<LogEntry> log;
  int id = 0;
  const Plan first = planned_log({}, "2027-04-05T17:00Z");
  Instant last_done;
  for (const DatedStep& step : first.schedule.steps) {
    const Operation& op = first.list.operations[step.operation];
    if (op.kind != OperationKind::coat || (op.coat == 3 && op.side == Side::show)) continue;
    log.push_back(coat(++id, op.key, iso_utc(step.end()).c_str()));
    last_done = step.end();
  }
  return planned_log(log, iso_utc(last_done + one_hour).c_str());
}

// The checker is the judge: it knows nothing of the search.
TEST_CASE("with one coat left there is no sooner place for it that breaks no rule") {
  const Plan plan = with_one_coat_left();
  REQUIRE(plan.schedule.unplaced.empty());
  std::vector<std::size_t> to_come;
  for (std::size_t i = 0; i < plan.schedule.steps.size(); ++i)
    if (const Operation& op = plan.list.operations[plan.schedule.steps[i].operation];
        !op.done && op.kind != OperationKind::fit_hardware)
      to_come.push_back(i);
  REQUIRE(plan.schedule.sessions.size() == 1);
  const Schedule& found = plan.schedule;
  CHECK(broken_rules(plan.job, plan.list, plan.air, found).empty());
  int tried = 0;
  for (Minutes sooner = plan.job.grid; found.steps[to_come.front()].begin() - sooner >= plan.now;
       sooner += plan.job.grid) {
    // With what comes before it, and alone.
    for (const bool alone : {false, true}) {
      Schedule moved = found;
      for (const std::size_t i : to_come) {
        DatedStep& step = moved.steps[i];
        if (alone && plan.list.operations[step.operation].kind == OperationKind::turn_over)
          continue;
        for (Interval& piece : step.pieces) piece = {piece.begin - sooner, piece.end - sooner};
        for (auto& at : step.reaches) at.reset();
      }
      for (Session& session : moved.sessions)
        for (Interval* part : {&session.set_up, &session.clean_up})
          *part = {part->begin - sooner, part->end - sooner};
      CHECK_FALSE(broken_rules(plan.job, plan.list, plan.air, moved).empty());
      ++tried;
    }
  }
  CHECK(tried > 100);
}

}  // namespace
}  // namespace tackfree
