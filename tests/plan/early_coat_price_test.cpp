#include "tackfree/plan/early_coat_price.hpp"

#include "tackfree/plan/make_work_at_hand.hpp"

#include <algorithm>
#include <string>

#include "plan/early_job.hpp"
#include "told_notes.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

std::optional<Instant> ready_of(const Job& job, Instant now) {
  Problems problems;
  const auto plan = make_plan(job, now, problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  REQUIRE(plan);
  return plan->schedule.ready_at;
}

TEST_CASE("what is tried for an early coat takes half of the effort at most") {
  const Job job =
      early_job("oil_polyurethane", {insisted_coat(both_2, instant("2027-04-06T19:45Z"))});
  Problems problems;
  solver::Effort effort{.left = 2};
  REQUIRE(make_work_at_hand(job, instant("2027-04-06T20:00Z"), problems, &effort));
  CHECK(effort.left < 2);
  solver::Effort much{.left = 10'000'000};
  REQUIRE(make_work_at_hand(job, instant("2027-04-06T20:00Z"), problems, &much));
  CHECK(much.left >= 5'000'000);
  CHECK(much.left < 10'000'000);
}

TEST_CASE("nobody is ready sooner for putting a coat on before the one below is dry") {
  for (const char* each : {"oil_polyurethane", "waterborne_polyurethane", "shellac",
                           "alkyd_varnish", "two_component_polyurethane"}) {
    const FinishingData& data = sample_job().data;
    if (std::ranges::find(data.classes, std::string(each), &Coating::class_key) ==
        data.classes.end())
      continue;
    for (const bool with_legs : {false, true})
      for (const int minutes_later : {45, 120}) {
        CAPTURE(each);
        CAPTURE(with_legs);
        CAPTURE(minutes_later);
        const Instant end = instant("2027-04-06T19:00Z") + Minutes(minutes_later);
        Job waits = early_job(each, {}), hurries = early_job(each, {insisted_coat(both_2, end)});
        if (with_legs) {
          add_legs(waits);
          add_legs(hurries);
        }
        const auto waiting = ready_of(waits, end - Minutes(30));
        const auto hurrying = ready_of(hurries, end);
        REQUIRE(waiting);
        CHECK((!hurrying || *hurrying >= *waiting));
      }
  }
}

TEST_CASE("a coat that was insisted on and yet had waited long enough costs nothing") {
  Job job = early_job("oil_polyurethane", {});
  job.history.entries.push_back(
      entry(3, LogKind::done, "top/finish/coat-2/both/sand-p240", "2027-04-08T18:30Z"));
  job.history.entries.push_back(insisted_coat(both_2, instant("2027-04-08T20:00Z")));
  const Plan plan = planned_again(job, "2027-04-08T20:05Z");
  CHECK(plan.early.empty());
  CHECK(notes_of<EarlyCoatNote>(plan.notes).empty());
  CHECK(notes_of<AdhesionNote>(plan.notes).empty());
}

}  // namespace
}  // namespace tackfree
