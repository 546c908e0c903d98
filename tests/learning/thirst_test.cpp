#include "tackfree/learning/thirst.hpp"

#include <cmath>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

Job with_log(const std::vector<double>& ratios) {
  Job job = small_job();
  for (const double ratio : ratios)
    job.history.coats.push_back(
        {.coating = "varnish", .at = {}, .expected = litres(0.2), .used = litres(0.2 * ratio)});
  return job;
}

}  // namespace

TEST_CASE("an empty log teaches nothing") {
  CHECK(thirst_factors(with_log({})) == std::vector<double>{1.0});
}

TEST_CASE("one coat moves the factor by a fifth of the way, ten by most of it, none over it") {
  double before = 1.0;
  for (std::size_t coats = 1; coats <= 10; ++coats) {
    const double now = thirst_factors(with_log(std::vector<double>(coats, 1.3))).at(0);
    CHECK(now > before);
    CHECK(now < 1.3);
    if (coats == 1) CHECK(std::log(now) / std::log(1.3) == Approx(0.2));
    before = now;
  }
  CHECK(std::log(before) / std::log(1.3) > 0.7);
}

TEST_CASE("a coat that took three times as much is asked about, and counts when insisted on") {
  Job job = with_log({1.1, 3.0});
  job.history.coats[1].entry = 7;
  CHECK(learnt_thirst(job).at(0).asked_of == std::vector<int>{7});
  CHECK(learnt_thirst(job).at(0).readings == 1);
  CHECK(thirst_factors(job).at(0) == thirst_factors(with_log({1.1})).at(0));
  job.history.coats[1].insisted = true;
  CHECK(learnt_thirst(job).at(0).asked_of.empty());
  CHECK(thirst_factors(job).at(0) > 1.2);
}

TEST_CASE("a tin teaches only about its own coating, and unusable readings are left out") {
  Job job = with_log({1.3});
  job.coatings.push_back(waterborne());
  job.history.coats.push_back(
      {.coating = "waterborne", .at = {}, .expected = litres(0.2), .used = litres(0.4)});
  job.history.coats.push_back(
      {.coating = "varnish", .at = {}, .expected = litres(0), .used = litres(0.4)});
  const std::vector<double> factors = thirst_factors(job);
  CHECK(factors.at(0) == Approx(thirst_factors(with_log({1.3})).at(0)));
  CHECK(factors.at(1) == 1.0);  // no system uses it
}

TEST_CASE("what is kept from one job goes on in the next as if it were one log") {
  const Learnt whole = learnt_thirst(with_log({1.3, 1.1, 1.2})).at(0);
  const Learnt first = learnt_thirst(with_log({1.3, 1.1})).at(0);
  Job next = with_log({1.2});
  next.coatings[0].need_taught = {first.factor, first.readings};
  const Learnt both = learnt_thirst(next).at(0);
  CHECK(both.factor == Approx(whole.factor));
  CHECK(both.readings == 3);
  CHECK(both.here == 1);
  Job unlogged = with_log({});
  unlogged.coatings[0].need_taught = {1.2, 4};
  CHECK(thirst_factors(unlogged).at(0) == Approx(1.2));
}

TEST_CASE("what earlier jobs have taught makes what is usual there no matter to ask about") {
  Job thirsty = with_log({2.4});
  thirsty.history.coats[0].entry = 5;
  CHECK(learnt_thirst(thirsty).at(0).asked_of == std::vector<int>{5});
  thirsty.coatings[0].need_taught = {2.2, 10};
  CHECK(learnt_thirst(thirsty).at(0).asked_of.empty());
}
