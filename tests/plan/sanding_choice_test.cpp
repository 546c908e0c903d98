#include "tackfree/plan/sanding_choice.hpp"

#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/listed_work.hpp"
#include "tackfree/plan/make_plan.hpp"
#include "tackfree/plan/recoat_slack.hpp"
#include "tackfree/schedule/check_schedule.hpp"
#include "tackfree/schedule/make_schedule.hpp"
#include "tackfree/schedule/missed_windows.hpp"

#include <algorithm>
#include <string>

#include "effort.hpp"
#include "sample_job.hpp"
#include "told_notes.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::instant;
using testing::notes_of;

/// Varnish that needs no sanding within `window`, and may be sanded `sand_after` it went on;
/// evenings and a long Saturday. Common practice, no source: a label that allows recoating unsanded
/// for some hours, and later only after sanding to key.
Job varnish(Duration window, Duration sand_after, int coats) {
  Job job = testing::sample_job();
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].coats = coats;
  job.coatings[0].needs_sanding_between = false;
  job.coatings[0].recoat_unsanded_within = sourced(window, Origin::label);
  job.coatings[0].label_after[index_of(Stage::sand)] = sourced(sand_after, Origin::label);
  job.calendar.weekly[5] = {{9 * 60, 20 * 60}};
  job.horizon = days(42);
  return job;
}

Plan sanding_plan(const Job& job) {
  Problems problems;
  auto plan = make_plan(job, instant("2027-04-05T17:00Z"), problems);
  REQUIRE(problems.empty());
  return std::move(*plan);
}

const DatedStep& coat_step(const Plan& plan, int number) {
  for (const DatedStep& step : plan.schedule.steps) {
    const Operation& op = plan.list.operations[step.operation];
    if (op.coating && op.coat == number) return step;
  }
  FAIL("no such coat");
  return plan.schedule.steps.front();
}

/// When it is ready with these coats sanded for and those held; nothing when that cannot be.
std::optional<Instant> ready_with(Plan plan, const KeyedCoats& sanded, const KeyedCoats& held) {
  plan.keyed = sanded;
  plan.in_window.clear();
  for (const CoatPlace& place : held) plan.in_window[place] = Duration();
  plan.list = listed_work(plan);
  const Schedule schedule =
      make_schedule(plan.job, plan.list, plan.air, drying_clocks(plan.job, plan.air),
                    {plan.now, plan.now + whole_minutes_up(plan.job.horizon)});
  if (!schedule.unplaced.empty() ||
      !missed_windows(plan.job, plan.list, plan.air, schedule).empty())
    return std::nullopt;
  return schedule.ready_at;
}

TEST_CASE("where sanding has to wait for days, the coat below waits for a day with time for both") {
  const Plan plan = sanding_plan(varnish(hours(12), days(8), 2));
  CHECK(plan.keyed.empty());
  REQUIRE(plan.in_window.contains({0, 0, 2}));
  CHECK(coat_step(plan, 2).begin() - *coat_step(plan, 1).dries_from <= Minutes(12 * 60));
  CHECK(iso_date(plan.job.calendar.zone.local(coat_step(plan, 2).begin()).on) == "2027-04-10");
  CHECK(plan.schedule.ready_at < ready_with(plan, {{0, 0, 2}}, {}));
  REQUIRE(plan.schedule.proof);
  CHECK(plan.schedule.proof->earliest_ready);
  CHECK(notes_of<PutOffNote>(plan.notes).size() + notes_of<LittleToSpareNote>(plan.notes).size() >
        0);
}

TEST_CASE("where sanding can be done the next evening, it is, and no coat waits for Saturday") {
  const Plan plan = sanding_plan(varnish(hours(12), hours(12), 2));
  CHECK(plan.keyed == KeyedCoats{{0, 0, 2}});
  CHECK(plan.in_window.empty());
  const auto held = ready_with(plan, {}, {{0, 0, 2}});
  REQUIRE(held);
  CHECK(plan.schedule.ready_at < held);
}

TEST_CASE("no mixture of sanding and holding to windows is ready sooner than the one chosen") {
  for (const Duration window : {hours(10), hours(23)})
    for (const Duration sand_after : {hours(12), days(8)}) {
      if (testing::sanitized && (window < hours(23) || sand_after < days(8))) continue;
      CAPTURE(window.in(hours));
      CAPTURE(sand_after.in(hours));
      const Plan plan = sanding_plan(varnish(window, sand_after, 3));
      REQUIRE(plan.schedule.ready_at);
      CHECK(broken_rules(plan.job, plan.list, plan.air, plan.schedule).empty());
      std::optional<Instant> best;
      for (int mixture = 0; mixture < 4; ++mixture) {
        KeyedCoats sanded, held;
        ((mixture & 1) != 0 ? sanded : held).insert({0, 0, 2});
        ((mixture & 2) != 0 ? sanded : held).insert({0, 0, 3});
        const auto ready = ready_with(plan, sanded, held);
        if (ready && (!best || *ready < *best)) best = ready;
      }
      CHECK(plan.schedule.ready_at == best);
    }
}

Minutes least_spare(const Plan& plan) {
  Minutes least = Minutes(100'000);
  for (const RecoatSlack& slack : recoat_slacks(plan))
    least = std::min(least, slack.until - plan.schedule.steps[slack.dated_step].begin());
  return least;
}

TEST_CASE(
    "hours to spare are left before a window shuts where the day it is ready stays the same") {
  Job job = varnish(hours(30), hours(12), 2);
  const Plan tight = sanding_plan(job);
  const Minutes spare = least_spare(tight);
  job.recoat_to_spare = to_duration(spare) + hours(0.5);
  const Plan roomy = sanding_plan(job);
  CHECK(least_spare(roomy) >= spare + Minutes(30));
  const auto day = [](const Plan& plan) {
    return plan.job.calendar.zone.local(*plan.schedule.ready_at).on;
  };
  CHECK(day(roomy) == day(tight));
  CHECK(roomy.schedule.sessions.size() <= tight.schedule.sessions.size());
  job.recoat_to_spare = hours(25);  // before the coat below is dry to recoat
  const Plan greedy = sanding_plan(job);
  CHECK(greedy.schedule.ready_at == tight.schedule.ready_at);
  const auto told = notes_of<LittleToSpareNote>(greedy.notes);
  REQUIRE_FALSE(told.empty());
  CHECK(told[0].wanted == hours(25));
}

}  // namespace
}  // namespace tackfree
