#include "tackfree/learning/slowness.hpp"

#include <algorithm>
#include <cmath>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

Learnt learnt(std::vector<CoatTried> trials, const Job& job = small_job()) {
  for (CoatTried& tried : trials) tried.coating = "varnish";
  return learnt_slowness(job, trials).at(0);
}

double factor(const std::vector<CoatTried>& trials) { return learnt(trials).factor; }

CoatTried failed(double share) { return {.failed_at = share}; }

}  // namespace

TEST_CASE("without trials a coat dries as reckoned") { CHECK(factor({}) == 1.0); }

TEST_CASE("a coat not dry when it should be is slow, and each more of it is believed more") {
  double before = 1.0;
  for (std::size_t coats = 1; coats <= 10; ++coats) {
    const double now = factor(std::vector<CoatTried>(coats, {.failed_at = 1.3, .passed_at = 1.7}));
    CHECK(now > before);
    CHECK(now < std::sqrt(1.3 * 1.7));
    before = now;
  }
  CHECK(factor({{.failed_at = 1.3, .passed_at = 1.7}}) < 1.15);
  CHECK(before > 1.2);
}

TEST_CASE("a coat that is dry in time teaches nothing; one that is dry sooner, that it is quick") {
  CHECK(factor({{.passed_at = 1.2}}) == 1.0);
  CHECK(factor({{.passed_at = 0.7}}) < 1.0);
}

TEST_CASE("a coat that failed its test is expected to need more than it had had") {
  const Coating coating = small_job().coatings.at(0);
  for (const double had : {0.5, 0.9, 1.0, 1.3, 2.0, 4.0}) {
    CAPTURE(had);
    CHECK(expected_need(coating, 1.0, had) > had);
    CHECK(expected_need(coating, 1.2, had) > expected_need(coating, 1.0, had));
  }
}

TEST_CASE("a trial that failed never makes a coat quicker, whatever was known before") {
  for (const double taught : {0.7, 1.0, 1.4, 2.0})
    for (const double had : {0.3, 0.9, 1.2, 1.6, 3.0})
      for (const bool others : {false, true}) {
        CAPTURE(taught);
        CAPTURE(had);
        CAPTURE(others);
        std::vector<CoatTried> before;
        if (others) before = {{.failed_at = 1.6, .passed_at = 2.0}, failed(1.5)};
        Job job = small_job();
        job.coatings[0].drying_taught = {taught, 6};
        const double known = learnt(before, job).factor;
        before.push_back(failed(had));
        CHECK(learnt(before, job).factor >= known);
        // A coat that is passed late says nothing; that it failed early before does not either.
        before.back().passed_at = std::max(1.1, had);
        if (!others) CHECK(learnt(before, job).factor >= known);
      }
}

TEST_CASE("a coat passed before its time is as quick as that, and no quicker for a trial before") {
  CHECK(factor({{.failed_at = 0.5, .passed_at = 0.8}}) >= factor({{.passed_at = 0.8}}));
}

TEST_CASE("a trial far off every guess is asked about, and counts when insisted on") {
  CoatTried strange = failed(6.0);
  strange.entry = 12;
  const Learnt asked = learnt({strange});
  CHECK(asked.factor == 1.0);
  CHECK(asked.asked_of == std::vector<int>{12});
  strange.insisted = true;
  CHECK(factor({strange}) > 1.1);
}

TEST_CASE(
    "a room that was slow for earlier jobs is slow for this one, and trials go on from there") {
  Job job = small_job();
  job.coatings[0].drying_taught = {1.4, 6};
  CHECK(learnt({}, job).factor == Approx(1.4));
  CHECK(learnt({}, job).readings == 6);
  const double now = learnt({{.passed_at = 0.8}}, job).factor;
  CHECK(now < 1.4);
  CHECK(now > 1.2);
}
