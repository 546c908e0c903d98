#include "tackfree/fumes/room_judgement.hpp"

#include <algorithm>

#include "fumes/judged_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;
using doctest::Approx;

TEST_CASE("a plan whose room is not known, or that releases nothing, is not judged") {
  JudgedJob job;
  CHECK(job.judged());
  job.job.room.volume.reset();
  CHECK_FALSE(job.judged());
  JudgedJob nothing;
  nothing.plan.sources.clear();
  CHECK_FALSE(nothing.judged());
}

TEST_CASE("closing the room makes every figure worse and raises the verdict") {
  JudgedJob job;
  job.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(8)};
  const RoomJudgement open = *job.judged();
  job.job.room.airing.reset();
  const RoomJudgement closed = *job.judged();
  CHECK(open.habit_given);
  CHECK_FALSE(closed.habit_given);
  for (std::size_t i = 0; i < vapour_limit_count; ++i)
    CHECK(closed.limits[i].share > open.limits[i].share);
  CHECK(open.verdict == HabitVerdict::enough);
  CHECK(closed.verdict == HabitVerdict::too_little);
  // Least flows are for constant air and do not depend on the habit.
  CHECK(closed.limit(VapourLimit::eight_hours).least_flow->in(cubic_metres_per_hour) ==
        Approx(open.limit(VapourLimit::eight_hours).least_flow->in(cubic_metres_per_hour)));
}

TEST_CASE("the proposed habit is enough when it is taken up, half an hour less is not") {
  JudgedJob job;
  const auto proposed = job.judged()->proposed;
  REQUIRE(proposed);
  job.job.room.airing = proposed;
  CHECK(job.judged()->verdict == HabitVerdict::enough);
  REQUIRE(proposed->after_for > hours(1));
  job.job.room.airing->after_for = proposed->after_for - hours(0.5);
  CHECK(job.judged()->verdict == HabitVerdict::too_little);
}

// Seen failing: half of the twelve hours were proposed, whatever else comes off that no sum holds.
TEST_CASE("less airing than the person does is never proposed") {
  JudgedJob job;
  job.plan.sources[0].applications[0].solvent = grams(10);
  for (const double after : {4.0, 12.0, 240.0}) {
    job.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(after)};
    const RoomJudgement judged = *job.judged();
    CHECK(judged.verdict == HabitVerdict::enough);
    CHECK_FALSE(judged.proposed);
  }
}

TEST_CASE("airing that ends while the coat is wet is found to rise again") {
  JudgedJob job;
  job.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(0.5)};
  const RoomJudgement early = *job.judged();
  CHECK(early.stretches[0].rises_again);
  CHECK(early.verdict == HabitVerdict::too_little);
  job.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(12)};
  CHECK_FALSE(job.judged()->stretches[0].rises_again);
  job.job.room.airing.reset();
  CHECK_FALSE(job.judged()->stretches[0].rises_again);  // there is no airing to end too early
}

TEST_CASE("more air is asked for where it is needed: not for the little coat two days later") {
  JudgedJob job;
  job.add_coat(hours(72));
  job.plan.sources[0].applications[1].solvent = grams(5);
  job.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(0.5)};
  const RoomJudgement judged = *job.judged();
  REQUIRE(judged.stretches.size() == 2);
  CHECK(judged.verdict == HabitVerdict::too_little);
  CHECK(judged.stretches[0].too_little);
  CHECK_FALSE(judged.stretches[1].too_little);
  CHECK(judged.proposed_eight_hours > 0);
  CHECK(judged.proposed_eight_hours <= 1);
}

TEST_CASE("a heavy release in a small closed room stops, with a flow that would do") {
  JudgedJob job;
  job.job.room.volume = cubic_metres(12);
  const RoomJudgement judged = *job.judged();
  REQUIRE(judged.stops());
  const auto flow = judged.limit(VapourLimit::quarter_explosive).least_flow;
  REQUIRE(flow);
  // With that flow, measured, and nothing else, the same room stays just under a quarter.
  job.job.data.air_changes.closed.value = *flow / *job.job.room.volume;
  job.job.data.air_changes.most_credited.value = per_hour(1e4);
  CHECK(job.judged()->limit(VapourLimit::quarter_explosive).share == Approx(1).epsilon(1e-3));
}

TEST_CASE("the shares of the explosive limit are one peak over a quarter and over a tenth") {
  JudgedJob job;
  const RoomJudgement judged = *job.judged();
  CHECK(judged.limit(VapourLimit::tenth_explosive).share ==
        Approx(2.5 * judged.limit(VapourLimit::quarter_explosive).share));
}

TEST_CASE("fast drying makes the peak, slow drying the airing time: the worst of both is told") {
  JudgedJob job;
  const double told = job.judged()->limit(VapourLimit::quarter_explosive).share * 0.25;
  const Measures all = measures(job.job.data.solvents, job.plan.solvents);
  const auto peak = [&](double factor) {
    return highest(room_air(job.job.room, job.job.data.air_changes, job.plan, {}, factor),
                   all.explosive)
        .value;
  };
  CHECK(told == Approx(peak(2)));
  CHECK(peak(2) > peak(1));
  CHECK(peak(1) > peak(0.5));
}

TEST_CASE("the air is under its limits from a moment on, or not before the next coats") {
  JudgedJob job;
  const RoomJudgement one = *job.judged();
  REQUIRE(one.stretches[0].under_limit_at);
  REQUIRE(one.stretches[0].under_tenth_at);
  CHECK(*one.stretches[0].under_limit_at < *one.stretches[0].under_tenth_at);
  job.add_coat(hours(3));
  const RoomJudgement two = *job.judged();
  REQUIRE(two.stretches.size() == 2);
  CHECK_FALSE(two.stretches[0].under_limit_at);
  CHECK(two.stretches[1].under_limit_at);
}

// Source: lower explosive limits and molar masses of NIOSH and IEC 60079-20-1, at 20 C; toluene 1.1
// % is 42.1 g/m3, mineral spirits at an assumed 0.8 % 47.9.
TEST_CASE("explosive limits turn into grams in a cubic metre") {
  Solvent toluene;
  toluene.explosive_limit.value = percent(1.1);
  toluene.molar_mass.value = grams_per_mole(92.14);
  CHECK(explosive_mass(toluene).in(grams_per_cubic_metre) == Approx(42.1).epsilon(0.002));
  Solvent spirits;
  spirits.explosive_limit.value = percent(0.8);
  spirits.molar_mass.value = grams_per_mole(144);
  CHECK(explosive_mass(spirits).in(grams_per_cubic_metre) == Approx(47.9).epsilon(0.002));
}

TEST_CASE("three times the 8-hour limit stands in for a missing 15-minute limit") {
  JudgedJob job;
  CHECK(measures(job.job.data.solvents, {0}).fifteen_minutes.limits[0] ==
        milligrams_per_cubic_metre(1800));
  job.job.data.solvents[0].limit_15min.reset();
  CHECK(measures(job.job.data.solvents, {0})
            .fifteen_minutes.limits[0]
            .in(milligrams_per_cubic_metre) == Approx(1050));
}

TEST_CASE("the vapour after a stretch has its highest mean inside, and falls once it is aired") {
  JudgedJob job;
  job.job.room.airing = AiringHabit{Opening::closed, Opening::open, hours(8)};
  const RoomJudgement judged = *job.judged();
  const std::vector<VapourAt>& vapour = judged.stretches.at(0).vapour;
  REQUIRE(vapour.size() == 97);
  CHECK(vapour.front().at == judged.stretches[0].coating.begin);
  CHECK(vapour.back().at - vapour.front().at == Minutes(24 * 60));
  CHECK(vapour.front().times == 0);
  const auto peak = std::ranges::max_element(vapour, {}, &VapourAt::times);
  CHECK(peak->times >= judged.stretches[0].eight_hours);
  CHECK(vapour[34].times < peak->times / 2);
}

TEST_CASE(
    "a coat that goes on while the room is still open for an earlier one does not count as "
    "closed") {
  JudgedJob job;
  job.add_coat(hours(3));
  job.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(12)};
  const RoomJudgement judged = *job.judged();
  REQUIRE(judged.stretches.size() == 2);
  CHECK_FALSE(judged.stretches[0].airing_goes_on);
  REQUIRE(judged.stretches[1].airing_goes_on);
  CHECK(judged.stretches[1].airing_goes_on->time.end ==
        judged.stretches[1].coating.end + Minutes(12 * 60));
  CHECK(judged.stretches[1].airing.empty());
}
