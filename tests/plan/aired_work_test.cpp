#include "tackfree/plan/aired_work.hpp"

#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/input/job_reader.hpp"
#include "tackfree/plan/make_plan.hpp"

#include <algorithm>

#include "sample_job.hpp"
#include "told_notes.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

const Instant that_monday = testing::instant("2027-04-05T17:00Z");

struct Spell {
  int cold_days;
  double cold_c, mild_c;
};

/// The sample job in a room of 100 W/K that lags by an hour, heated to 20 C by 2 kW, open with a
/// fan for twelve hours after coating; outdoors cold at first, then mild.
Job aired_job(const Spell& spell) {
  Job job = testing::sample_job();
  AirRows rows;
  for (int hour = 0; hour <= 130 * 24; ++hour)
    rows.rows.push_back({that_monday + (hour - 48) * one_hour,
                         celsius(hour < (spell.cold_days + 2) * 24 ? spell.cold_c : spell.mild_c),
                         {},
                         humidity_percent(50),
                         hour + 2});
  AirMix mix;
  mix.sources.push_back({"outdoors", rows, 0});
  mix.indoors = Indoors{.time_constant = sourced(hours(1), Origin::assumed),
                        .heating = Heating{.set_point = celsius(20),
                                           .hours = {{0, 24 * 60}},
                                           .loss = sourced(watts_per_kelvin(100), Origin::assumed),
                                           .heater = sourced(kilowatts(2), Origin::assumed),
                                           .zone = Zone::utc()},
                        .humidity_ceiling = std::nullopt};
  job.air = mix;
  job.horizon = days(60);
  job.room.fan = Fan{.flow = cubic_metres_per_hour(600), .measured = true};
  job.room.airing = AiringHabit{Opening::open_and_fan, Opening::open_and_fan, hours(12)};
  return job;
}

Plan planned_aired(Job job) {
  Problems problems;
  return make_plan(std::move(job), that_monday, problems).value();
}

bool is_open(const Plan& plan, Instant at) {
  return std::ranges::any_of(plan.room->stretches, [&](const StretchJudgement& stretch) {
    return std::ranges::any_of(stretch.airing, [&](const AiringSpan& span) {
      return span.time.begin <= at && at < span.time.end;
    });
  });
}

/// The coldest of a coat's hours until touch-dry in that room, minute by minute by Euler's rule
/// from nothing but the dates, the openings that the plan prints, and the watts: 235 W/K through
/// the openings on top of 100, own arithmetic in cold_airing_test.cpp.
double coldest_wet_c(const Plan& plan, const Spell& spell) {
  double coldest = 100, room = spell.cold_c;
  for (Instant at = that_monday - 2 * one_day; at < plan.schedule.span.end; at += Minutes(1)) {
    for (const DatedStep& step : plan.schedule.steps) {
      if (!plan.list.operations[step.operation].coating) continue;
      if (step.begin() <= at && at <= step.reaches[index_of(Stage::touch)].value())
        coldest = std::min(coldest, room);
    }
    const double outdoors =
        at < that_monday + spell.cold_days * one_day ? spell.cold_c : spell.mild_c;
    const double loss = is_open(plan, at) ? 335 : 100;
    const double heater = room < 20 ? 2000 : 0;
    room += (heater - loss * (room - outdoors)) / (100 * 3600.0) * 60;
  }
  return coldest;
}

bool has_coats(const Plan& plan) {
  return std::ranges::any_of(plan.schedule.steps, [&](const DatedStep& step) {
    return plan.list.operations[step.operation].coating.has_value();
  });
}

}  // namespace

// At 0 C outdoors the heater holds 6.0 C in the open room, at 14 C 20 C; closed, 20 C in both.
TEST_CASE("coats wait for weather in which the room that is aired after them stays warm enough") {
  for (const int cold_days : {2, 9}) {
    const Spell spell{cold_days, 0, 14};
    const Plan plan = planned_aired(aired_job(spell));
    CAPTURE(cold_days);
    CHECK(plan.schedule.unplaced.empty());
    REQUIRE(has_coats(plan));
    const double bears = plan.job.coatings[0].limits.hold_min.value.in_celsius();
    CHECK(coldest_wet_c(plan, spell) > bears - 0.3);
    REQUIRE(plan.cold_airing);
    CHECK_FALSE(plan.cold_airing->too_cold());
    CHECK_FALSE(plan.cold_airing->dewy());
    CHECK(plan.aired);
  }
}

TEST_CASE("weather that is mild throughout settles on the openings of the plan's own coats") {
  const Plan plan = planned_aired(aired_job({0, 14, 14}));
  REQUIRE(plan.aired);
  CHECK_FALSE(plan.aired->every_chance);
  CHECK(plan.aired->openings == openings(plan));
  CHECK(plan.aired->openings.front().times == Approx(3.35));
}

TEST_CASE("where airing never leaves the room warm enough the plan says so, and ends") {
  const Plan plan = planned_aired(aired_job({200, 0, 0}));
  CHECK_FALSE(plan.schedule.unplaced.empty());
  CHECK_FALSE(has_coats(plan));
  CHECK(testing::times_told(plan.notes, PlainNote::too_cold_as_aired) == 1);
}

TEST_CASE("the room's own air stays as it is given, however the room is aired") {
  Job closed = testing::sample_job();
  Job aired = testing::sample_job();
  aired.room.airing = AiringHabit{Opening::open, Opening::open, hours(12)};
  const Plan plan = planned_aired(std::move(aired));
  CHECK_FALSE(plan.aired);
  CHECK(plan.schedule.ready_at == planned_aired(std::move(closed)).schedule.ready_at);
}

TEST_CASE("the wall shelves' dates stand on the aired air") {
  Problems problems;
  const auto job =
      read_job(FilesOnDisk(), TACKFREE_ROOT "/data/demo/wall_shelves/wall_shelves.json",
               std::nullopt, problems);
  const auto plan = make_plan(job.value(), job->now_at.value(), problems);
  REQUIRE(plan);
  CHECK(plan->schedule.unplaced.empty());
  REQUIRE(plan->cold_airing);
  CHECK_FALSE(plan->cold_airing->too_cold());
  CHECK_FALSE(plan->cold_airing->dewy());
}
