#include "tackfree/learning/thirst.hpp"

#include <cmath>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

struct LoggedCoats : Job {
  std::vector<CoatPutOn> coats;
};

LoggedCoats with_log(const std::vector<double>& ratios) {
  LoggedCoats job{small_job(), {}};
  for (const double ratio : ratios)
    job.coats.push_back(
        {.coating = "varnish", .at = {}, .expected = litres(0.2), .used = litres(0.2 * ratio)});
  return job;
}

std::vector<Learnt> learnt(const LoggedCoats& job) { return learnt_thirst(job, job.coats); }
std::vector<double> factors(const LoggedCoats& job) { return factors_of(learnt(job)); }

}  // namespace

TEST_CASE("an empty log teaches nothing") {
  CHECK(factors(with_log({})) == std::vector<double>{1.0});
}

TEST_CASE("one coat moves the factor by a fifth of the way, ten by most of it, none over it") {
  double before = 1.0;
  for (std::size_t coats = 1; coats <= 10; ++coats) {
    const double now = factors(with_log(std::vector<double>(coats, 1.3))).at(0);
    CHECK(now > before);
    CHECK(now < 1.3);
    if (coats == 1) CHECK(std::log(now) / std::log(1.3) == Approx(0.2));
    before = now;
  }
  CHECK(std::log(before) / std::log(1.3) > 0.7);
}

TEST_CASE("a coat that took three times as much is asked about, and counts when insisted on") {
  LoggedCoats job = with_log({1.1, 3.0});
  job.coats[1].entry = 7;
  CHECK(learnt(job).at(0).asked_of == std::vector<int>{7});
  CHECK(learnt(job).at(0).readings == 1);
  CHECK(factors(job).at(0) == factors(with_log({1.1})).at(0));
  job.coats[1].insisted = true;
  CHECK(learnt(job).at(0).asked_of.empty());
  CHECK(factors(job).at(0) > 1.2);
}

TEST_CASE("a tin teaches only about its own coating, and unusable readings are left out") {
  LoggedCoats job = with_log({1.3});
  job.coatings.push_back(waterborne());
  job.coats.push_back(
      {.coating = "waterborne", .at = {}, .expected = litres(0.2), .used = litres(0.4)});
  job.coats.push_back({.coating = "varnish", .at = {}, .expected = litres(0), .used = litres(0.4)});
  const std::vector<double> each = factors(job);
  CHECK(each.at(0) == Approx(factors(with_log({1.3})).at(0)));
  CHECK(each.at(1) == 1.0);  // no system uses it
}

TEST_CASE("what is kept from one job goes on in the next as if it were one log") {
  const Learnt whole = learnt(with_log({1.3, 1.1, 1.2})).at(0);
  const Learnt first = learnt(with_log({1.3, 1.1})).at(0);
  LoggedCoats next = with_log({1.2});
  next.coatings[0].need_taught = {first.factor, first.readings};
  const Learnt both = learnt(next).at(0);
  CHECK(both.factor == Approx(whole.factor));
  CHECK(both.readings == 3);
  CHECK(both.here == 1);
  LoggedCoats unlogged = with_log({});
  unlogged.coatings[0].need_taught = {1.2, 4};
  CHECK(factors(unlogged).at(0) == Approx(1.2));
}

TEST_CASE("what earlier jobs have taught makes what is usual there no matter to ask about") {
  LoggedCoats thirsty = with_log({2.4});
  thirsty.coats[0].entry = 5;
  CHECK(learnt(thirsty).at(0).asked_of == std::vector<int>{5});
  thirsty.coatings[0].need_taught = {2.2, 10};
  CHECK(learnt(thirsty).at(0).asked_of.empty());
}
