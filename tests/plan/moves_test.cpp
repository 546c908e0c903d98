#include "tackfree/plan/moves.hpp"

#include "tackfree/plan/make_plan.hpp"

#include <algorithm>

#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

constexpr const char* monday = "2027-04-05T17:00Z";

TEST_CASE("without a last plan nothing has moved, and with the same one neither") {
  const Plan first = planned_again(sample_job(), monday);
  CHECK(first.moves.empty());
  Job job = sample_job();
  job.last_plan = as_last(first);
  const Plan again = planned_again(job, monday);
  CHECK(again.moves.empty());
}

TEST_CASE("steps stay where a last plan had them later than they need be, if that is as good") {
  Job job = sample_job();
  job.coatings[0].grits.bare.value.insert(job.coatings[0].grits.bare.value.begin(), Grit{80});
  const Plan first = planned_again(job, monday);
  job.last_plan = as_last(first);
  // The last plan had the first sanding an hour later: the whole is ready just as soon.
  LastStep& sanding = job.last_plan->steps.front();
  const Instant later = sanding.time.begin + Minutes(30);
  sanding.time = {later, later + sanding.time.length()};
  const Plan kept = planned_again(job, monday);
  CHECK(kept.schedule.ready_at == first.schedule.ready_at);
  CHECK(kept.schedule.steps.front().begin() == later);
  CHECK(kept.schedule.steps.front().held.back().by == HeldBy::last_plan);
}

TEST_CASE("a last plan that is worse is not kept to") {
  const Plan first = planned_again(sample_job(), monday);
  Job job = sample_job();
  job.last_plan = as_last(first);
  for (LastStep& step : job.last_plan->steps) step.time.begin += 7 * one_day;
  const Plan plan = planned_again(job, monday);
  CHECK(plan.schedule.ready_at == first.schedule.ready_at);
  CHECK_FALSE(plan.moves.empty());
  for (const Move& move : plan.moves) CHECK(*move.from - *move.to == 7 * one_day);
}

TEST_CASE("done, new and vanished steps are moves") {
  const Plan first = planned_again(sample_job(), monday);
  Job job = logged_job({coat(1, back_1, "2027-04-06T19:10Z")});
  job.last_plan = as_last(first);
  job.last_plan->steps.push_back(
      {"top/finish/coat-9/back/coat", "coat 9", {instant(monday), instant(monday)}, false});
  std::erase_if(job.last_plan->steps, [](const LastStep& s) { return s.key == show_1; });
  const Plan plan = planned_again(job, "2027-04-06T19:20Z");
  const auto has = [&](const std::string& key, bool was_there) {
    return std::ranges::any_of(plan.moves, [&](const Move& move) {
      return move.dated_step && move.from.has_value() == was_there &&
             plan.list.operations[plan.schedule.steps[*move.dated_step].operation].key == key;
    });
  };
  CHECK(has(back_1, true));
  CHECK(has(show_1, false));
  CHECK(plan.moves.back().title == "coat 9");
  CHECK_FALSE(plan.moves.back().dated_step);
}

TEST_CASE("what was done within a step of the grid of its time was done as planned") {
  const Plan first = planned_again(sample_job(), monday);
  const auto planned = std::ranges::find_if(first.schedule.steps, [&](const DatedStep& step) {
    return first.list.operations[step.operation].key == back_1;
  });
  REQUIRE(planned != first.schedule.steps.end());
  const Instant now = planned->end() + one_hour;
  for (const auto& late : {std::pair(4, 0), std::pair(20, 1)}) {  // minutes, moves
    CAPTURE(late.first);
    Job job = logged_job({coat(1, back_1, iso_utc(planned->end() + Minutes(late.first)).c_str())});
    job.last_plan = as_last(first);
    const Plan plan = planned_again(job, iso_utc(now).c_str());
    CHECK(std::ranges::count_if(plan.moves, [&](const Move& move) {
            return move.dated_step &&
                   plan.list.operations[plan.schedule.steps[*move.dated_step].operation].done;
          }) == late.second);
  }
}

}  // namespace
}  // namespace tackfree
