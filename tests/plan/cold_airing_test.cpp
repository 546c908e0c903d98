#include "tackfree/plan/cold_airing.hpp"

#include "tackfree/plan/make_plan.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

/// The sample job in a room that is heated to 20 C with outdoors at 0 C, open with the fan on for
/// twelve hours after coating.
Job heated_job(double heater_kw) {
  Job job = testing::sample_job();
  AirMix mix;
  mix.sources.push_back(
      {.name = "outdoors", .what = ConstantAir{celsius(0), humidity_percent(50)}});
  mix.indoors = Indoors{.time_constant = sourced(hours(1), Origin::assumed),
                        .heating = Heating{.set_point = celsius(20),
                                           .hours = {{0, 24 * 60}},
                                           .loss = sourced(watts_per_kelvin(100), Origin::assumed),
                                           .heater = sourced(kilowatts(heater_kw), Origin::assumed),
                                           .zone = Zone::utc()},
                        .humidity_ceiling = std::nullopt};
  job.air = mix;
  job.room.fan = Fan{.flow = cubic_metres_per_hour(600), .measured = true};
  job.room.airing = AiringHabit{Opening::open_and_fan, Opening::open_and_fan, hours(12)};
  return job;
}

Plan planned(Job job) {
  Problems problems;
  return make_plan(std::move(job), testing::instant("2027-04-05T17:00Z"), problems).value();
}

}  // namespace

// The open door lets in 5 x 90 m3/h and the fan 600, together the root of the sum of their squares,
// 750, the closed room 0.5 x 90: (750 - 45) x 1200 J/m3K / 3600 = 235 W/K on top of 100; a heater
// of 6 kW then holds 6000 / 335 = 17.9 K over outdoors. Own arithmetic.
TEST_CASE("a fan cools a heated room to what its heater can hold against both losses") {
  const Plan plan = planned(heated_job(6.0));
  REQUIRE(plan.cold_airing);
  CHECK(plan.cold_airing->with_airing);
  CHECK(plan.cold_airing->room.in_celsius() == Approx(6000.0 / 335).epsilon(1e-3));
}

TEST_CASE("a heater strong enough for both losses keeps the room at its set point") {
  const Plan plan = planned(heated_job(10.0));
  REQUIRE(plan.cold_airing);
  CHECK(plan.cold_airing->room.in_celsius() == Approx(20).epsilon(1e-3));
}

TEST_CASE("an aired room without a heater is as cold as outdoors, one without outdoors as given") {
  Job unheated = heated_job(2.0);
  auto& mix = std::get<AirMix>(unheated.air);
  mix.indoors->heating.reset();
  mix.sources[0].what = ConstantAir{celsius(16), humidity_percent(50)};
  const Plan outdoors = planned(std::move(unheated));
  REQUIRE(outdoors.cold_airing);
  CHECK(outdoors.cold_airing->room.in_celsius() == Approx(16));
  Job given = testing::sample_job();
  given.room.airing = AiringHabit{Opening::open, Opening::open, hours(2)};
  const Plan own = planned(std::move(given));
  REQUIRE(own.cold_airing);
  CHECK_FALSE(own.cold_airing->with_airing);
  CHECK(own.cold_airing->room.in_celsius() == Approx(20));
  CHECK_FALSE(planned(testing::sample_job()).cold_airing);  // nobody airs
}
