#include "tackfree/evening/unlogged.hpp"

#include "tackfree/evening/tonight.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "plan/planned_log.hpp"

namespace tackfree {
namespace {

using namespace testing;

/// The first plan of a job, from before its first evening.
LastPlan first_plan(const Job& job) { return as_last(planned_again(job, "2027-04-05T17:00Z")); }

Interval planned_for(const LastPlan& plan, const std::string& key) {
  for (const LastStep& step : plan.steps)
    if (step.key == key) return step.time;
  FAIL("no step " << key);
  return {};
}

struct Asked {
  Plan plan;
  Unlogged unlogged;
};

Asked asked(Job job, const std::vector<LastPlan>& planned, Instant now, solver::Effort& effort) {
  job.last_plan = planned.front();
  Plan plan = planned_again(job, iso_utc(now).c_str());
  Unlogged unlogged_work = unlogged(plan, job, planned, now, effort);
  return {std::move(plan), std::move(unlogged_work)};
}

Asked asked(Job job, const std::vector<LastPlan>& planned, Instant now) {
  solver::Effort effort;
  return asked(std::move(job), planned, now, effort);
}

const std::string& last_key(const Asked& all, const UnloggedWork& work) {
  return all.plan.list.operations.at(work.operations.back()).key;
}

const std::string bare_220 = "top/finish/bare/both/sand-p220";

TEST_CASE("a coat and the sanding before it that are due and not logged are asked about") {
  const LastPlan before = first_plan(sample_job());
  const Interval coat_time = planned_for(before, back_1);
  const Asked all = asked(sample_job(), {before}, coat_time.end + Minutes(5));
  REQUIRE(all.unlogged.asked.size() == 2);
  const UnloggedWork& coat_asked = all.unlogged.asked[0];
  CHECK(last_key(all, coat_asked) == back_1);
  CHECK(coat_asked.planned.begin == coat_time.begin);
  CHECK(coat_asked.report.kind == LogKind::coat);
  CHECK(coat_asked.report.at == coat_time.end);
  CHECK(coat_asked.report.batch.empty());
  const UnloggedWork& sanding = all.unlogged.asked[1];
  CHECK(sanding.operations.size() > 1);
  CHECK(last_key(all, sanding) == bare_220);
  CHECK(sanding.report.kind == LogKind::done);
  CHECK(sanding.report.step == "sand-p220");
  CHECK(all.unlogged.older.empty());
}

TEST_CASE("yes and no are two plans: with the coat at its hour, and with it still to come") {
  const LastPlan before = first_plan(sample_job());
  const Interval coat_time = planned_for(before, back_1);
  const Instant now = coat_time.end + Minutes(5);
  const Asked all = asked(sample_job(), {before}, now);
  REQUIRE_FALSE(all.unlogged.asked.empty());
  const UnloggedWork& work = all.unlogged.asked.front();
  REQUIRE(work.if_done);
  // The same as if the line had been in the log.
  const Plan logged = planned_again(logged_job({coat(1, back_1, iso_utc(coat_time.end).c_str())}),
                                    iso_utc(now).c_str());
  const Tonight then = tonight(*work.if_done), wanted = tonight(logged);
  CHECK(then.stretch.begin == wanted.stretch.begin);
  CHECK(then.work == wanted.work);
  REQUIRE(work.if_not);
  CHECK(*work.if_not >= now);
}

TEST_CASE("the plans for both answers share one effort, and without any there are still plans") {
  const LastPlan before = first_plan(sample_job());
  const Instant now = planned_for(before, back_1).end + Minutes(5);
  solver::Effort one_run{.left = 1'000'000};
  REQUIRE(asked(sample_job(), {before}, now, one_run).unlogged.asked.size() == 2);
  CHECK(one_run.left < 1'000'000);
  solver::Effort spent{.left = 0};
  const Asked all = asked(sample_job(), {before}, now, spent);
  REQUIRE(all.unlogged.asked.size() == 2);
  for (const UnloggedWork& work : all.unlogged.asked) CHECK(work.if_done->schedule.ready_at);
  CHECK(spent.left == 0);
}

TEST_CASE("nothing is asked before it should be over, nor of what is logged, left out or passed") {
  const LastPlan before = first_plan(sample_job());
  const Interval coat_time = planned_for(before, back_1);
  const auto count = [&](std::vector<LogEntry> log, Instant now) {
    const Asked all = asked(logged_job(std::move(log)), {before}, now);
    return all.unlogged.asked.size() + all.unlogged.older.size();
  };
  const std::string end = iso_utc(coat_time.end), begin = iso_utc(coat_time.begin);
  const Interval sanding = planned_for(before, bare_220);
  const std::string sanded = iso_utc(sanding.end);
  CHECK(count({}, before.now) == 0);
  CHECK(count({entry(1, LogKind::done, bare_220, sanded.c_str())}, coat_time.end - Minutes(1)) ==
        0);
  CHECK(count({entry(1, LogKind::done, bare_220, sanded.c_str())}, coat_time.end) == 1);
  CHECK(count({coat(1, back_1, end.c_str())}, coat_time.end) == 0);
  CHECK(count({entry(1, LogKind::skipped, back_1, end.c_str())}, coat_time.end + Minutes(60)) == 0);
}

TEST_CASE("work of hours that were logged as away is not asked about, the work before them is") {
  const LastPlan before = first_plan(sample_job());
  const Interval coat_time = planned_for(before, back_1), sanding = planned_for(before, bare_220);
  REQUIRE(sanding.end <= coat_time.begin);
  const auto keys = [&](Interval hours) {
    LogEntry line = entry(1, LogKind::away, "", iso_utc(before.now).c_str());
    line.hours = hours;
    std::vector<std::string> found;
    const Asked all = asked(logged_job({line}), {before}, coat_time.end + Minutes(5));
    for (const auto* works : {&all.unlogged.asked, &all.unlogged.older})
      for (const UnloggedWork& work : *works) found.push_back(last_key(all, work));
    return found;
  };
  CHECK(keys({coat_time.end, coat_time.end + one_day}) ==
        std::vector<std::string>{back_1, bare_220});
  CHECK(keys({coat_time.begin, coat_time.end}) == std::vector<std::string>{bare_220});
  CHECK(keys({before.now, coat_time.end}).empty());
}

TEST_CASE("a coat that waits for an unlogged one is not asked about before that is answered") {
  const LastPlan before = first_plan(sample_job());
  const Instant late = planned_for(before, back_2).end + Minutes(5);
  const Asked all = asked(sample_job(), {before}, late);
  REQUIRE_FALSE(all.unlogged.asked.empty());
  CHECK(last_key(all, all.unlogged.asked.front()) == back_1);
  for (const auto* list : {&all.unlogged.asked, &all.unlogged.older})
    for (const UnloggedWork& work : *list)
      CHECK(all.plan.list.operations.at(work.operations.back()).coat <= 1);
}

TEST_CASE("two questions at most; what else is due is summed up, and each names its batch") {
  Job job = sample_job();
  job.coatings[0].grits.bare.value.insert(job.coatings[0].grits.bare.value.begin(), Grit{80});
  add_legs(job);
  const LastPlan before = first_plan(job);
  const Instant late = before.now + 14 * one_day;
  const Asked all = asked(job, {before}, late);
  REQUIRE(all.unlogged.asked.size() == 2);
  CHECK(all.unlogged.older.size() == 2);
  for (const UnloggedWork& work : all.unlogged.asked) {
    CHECK(work.report.kind == LogKind::coat);
    CHECK_FALSE(work.report.batch.empty());
  }
  CHECK(all.unlogged.asked[0].planned.end >= all.unlogged.asked[1].planned.end);
  for (const UnloggedWork& work : all.unlogged.older) CHECK_FALSE(work.if_done);
}

TEST_CASE("what was due when the kept plan was made anew is still asked about") {
  const LastPlan before = first_plan(sample_job());
  const Interval coat_time = planned_for(before, back_1);
  const Instant again = coat_time.end + Minutes(30);
  const LastPlan kept = as_last(planned_again(sample_job(), iso_utc(again).c_str()));
  const Asked all = asked(sample_job(), {kept, before}, again + Minutes(1));
  REQUIRE_FALSE(all.unlogged.asked.empty());
  CHECK(all.unlogged.asked[0].planned.begin == coat_time.begin);
  // But not what the newer plan had put off before it was due.
  const Instant early = before.now + Minutes(30);
  LastPlan put_off = as_last(planned_again(sample_job(), iso_utc(early).c_str()));
  for (LastStep& step : put_off.steps)
    step.time = {step.time.begin + 7 * one_day, step.time.end + 7 * one_day};
  CHECK(asked(sample_job(), {put_off, before}, coat_time.end).unlogged.asked.empty());
}

TEST_CASE("work that cannot have been done as planned is not asked about") {
  // The coat below went on a day late: at the planned hour this one would have been on a wet film.
  const LastPlan before = first_plan(sample_job());
  const auto turn = std::ranges::find_if(
      before.steps, [](const LastStep& step) { return step.key.ends_with("/turn-over"); });
  REQUIRE(turn != before.steps.end());
  const auto turn_asked = [&](Instant coat_at) {
    const Asked all = asked(logged_job({coat(1, back_1, iso_utc(coat_at).c_str())}), {before},
                            turn->time.end + Minutes(5));
    return std::ranges::any_of(all.unlogged.asked, [&](const UnloggedWork& work) {
      return last_key(all, work) == turn->key;
    });
  };
  CHECK(turn_asked(planned_for(before, back_1).end));
  CHECK_FALSE(turn_asked(turn->time.begin - Minutes(20)));
}

}  // namespace
}  // namespace tackfree
