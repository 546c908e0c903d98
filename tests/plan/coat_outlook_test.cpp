#include "tackfree/plan/coat_outlook.hpp"

#include <algorithm>

#include "sample_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

const Instant now = instant("2027-04-05T17:45Z");

/// Nights at 4 C, afternoons at 20 C, dew point 2 C.
Job cold_nights(const std::string& class_key) {
  Job job = sample_job(class_key);
  AirDays lows_and_highs;
  for (int i = -1; i < 60; ++i)
    lows_and_highs.days.push_back(
        {instant("2027-04-05T00:00Z") + Minutes(1440L * i),
         {.low = celsius(4), .high = celsius(20), .dew_point = celsius(2)}});
  job.air = AirMix{.file = "", .sources = {{"days", lows_and_highs, 0}}};
  return job;
}

CoatOutlook outlook(const Job& job, Instant at) {
  Problems problems;
  auto found = coat_outlook(job, 0, at, now, problems);
  REQUIRE(found);
  return *found;
}

}  // namespace

TEST_CASE("At a mild constant every rule is kept and the first full hour is as good as any") {
  const CoatOutlook found = outlook(sample_job(), now);
  CHECK(found.gates.empty());
  CHECK(found.all_open == now);
  CHECK(found.best->at == instant("2027-04-05T18:00Z"));
  CHECK(found.stages.size() == stage_count);
  CHECK(found.never.empty());
  CHECK(found.recoat_unsanded_until.has_value());
}

TEST_CASE("On a cold morning the rules that fail are named, each with the hour it is kept again") {
  const Job job = cold_nights("oil_polyurethane");
  const Instant dawn = instant("2027-04-07T05:00Z");
  const CoatOutlook found = outlook(job, dawn);
  REQUIRE_FALSE(found.gates.empty());
  const auto cold = std::find_if(found.gates.begin(), found.gates.end(),
                                 [](const GateAt& g) { return g.gate == Gate::too_cold; });
  REQUIRE(cold != found.gates.end());
  REQUIRE(cold->opens);
  CHECK(*cold->opens > dawn);
  CHECK(*cold->opens < dawn + Minutes(6 * 60));
  if (found.all_open)
    for (const GateAt& gate : found.gates) CHECK(gate.opens <= found.all_open);
}

TEST_CASE("The best hour keeps every rule and dries no slower than now") {
  Job job = cold_nights("oil_polyurethane");
  job.coatings[0].limits.hold_min.value = celsius(0);
  const Instant noon = instant("2027-04-07T18:00Z");
  const CoatOutlook found = outlook(job, noon);
  REQUIRE(found.best);
  const CoatOutlook at_best = outlook(job, found.best->at);
  CHECK(at_best.gates.empty());
  const auto sanded = [](const CoatOutlook& o) {
    for (const DryingExplanation& why : o.stages)
      if (why.stage == Stage::sand) return why.wait();
    return hours(1e9);
  };
  CHECK(sanded(at_best) <= sanded(found));
  CHECK(sanded(at_best).in(minutes) == doctest::Approx(found.best->wait.in(minutes)));
}

TEST_CASE("Blush is judged for classes that can blush, and for no others") {
  CHECK(outlook(sample_job("shellac"), now).blush.has_value());
  CHECK_FALSE(outlook(sample_job("oil_polyurethane"), now).blush.has_value());
}
