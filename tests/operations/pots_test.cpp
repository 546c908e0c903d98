#include "tackfree/operations/pots.hpp"

#include "tackfree/operations/operation_list.hpp"

#include <algorithm>
#include <vector>

#include "sample_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a mixed pot lives half as long for every 10 K over the label's air, never longer") {
  Coating coating;
  CHECK_FALSE(pot_life_in(coating, celsius(23)));
  coating.pot_life = sourced(hours(4), Origin::label);
  coating.label_temperature = celsius(23);
  const auto hours_in = [&](double at) { return pot_life_in(coating, celsius(at))->in(hours); };
  CHECK(hours_in(23) == doctest::Approx(4));
  CHECK(hours_in(33) == doctest::Approx(2));
  CHECK(hours_in(28) == doctest::Approx(4 / 1.41421));
  CHECK(hours_in(10) == doctest::Approx(4));
}

TEST_CASE("pots are counted for the warmest air in which the class may be put on") {
  const Job job = testing::sample_job("two_component_polyurethane");
  const Coating& coating = job.coatings[0];
  const auto mixed = [&](std::optional<Temperature> warmest) {
    Operation coat;
    coat.work = minutes(150);
    add_pots(coat, coating, minutes(5), warmest);
    return coat;
  };
  CHECK(mixed({}).pots == 1);  // a pot is good for 3 h at 23 C
  CHECK(mixed(celsius(10)).pots == 1);
  // At 33 C it would be 90 min; over 30 C nothing is put on, so 110.8 min of 30 C count.
  const Operation hot = mixed(celsius(33));
  CHECK(hot.pot_life.in(minutes) == doctest::Approx(110.8).epsilon(0.001));
  CHECK(hot.pots == 2);
  CHECK(hot.work.in(minutes) == doctest::Approx(160));
}

TEST_CASE("what is wiped off is put on in portions that one person can wipe in time") {
  Coating oil;
  oil.wipe_off_after = sourced(minutes(10), Origin::practice);
  oil.wipe_off_within = sourced(minutes(30), Origin::practice);
  const auto put_on = [&](double area, double work) {
    Operation coat;
    coat.area = square_metres(area);
    coat.work = minutes(work);
    add_portions(coat, oil, square_metres_per_hour(24));
    return coat;
  };
  CHECK(put_on(2.304, 11.52).portions == 1);
  CHECK(put_on(2.304, 11.52).work.in(minutes) == doctest::Approx(11.52));
  // 57.6 min are three times the 20 that there are: two portions are left and wiped within.
  CHECK(put_on(11.52, 57.6).portions == 3);
  CHECK(put_on(11.52, 57.6).work.in(minutes) == doctest::Approx(57.6 + 2 * (10 + 28.8 / 3)));
}

TEST_CASE("a two-part coating of a job is mixed in as many pots as its pot life asks for") {
  const auto coat_of = [](const Job& job, const char* key) {
    const SurfaceTakeoff takeoff = take_off(job);
    const OperationList list = operation_list(
        job, takeoff, job_volumes(job, takeoff, std::vector<double>(job.coatings.size(), 1.0)));
    return *std::ranges::find(list.operations, key, &Operation::key);
  };
  Job job = testing::sample_job("two_component_polyurethane");
  job.batches[0].sides = Sides::on_points;
  const auto coat = [&] { return coat_of(job, "top/finish/coat-1/both/coat"); };
  // 2.304 m2 at 8 m2/h are 17.3 min; a pot is good for 3 h; mixing takes 5 min.
  CHECK(coat().pots == 1);
  CHECK(coat().work.in(minutes) == doctest::Approx(2.304 / 8 * 60 + 5));
  job.parts[0].quantity = 15;
  CHECK(coat().pots == 2);  // 259 min
  CHECK(coat().work.in(minutes) == doctest::Approx(15 * 2.304 / 8 * 60 + 10));
  CHECK(coat_of(testing::sample_job(), "top/finish/coat-1/back/coat").pots == 0);
}
