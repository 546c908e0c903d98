#include "tackfree/evening/oily_rags.hpp"

#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

OilyRags rags_of(std::vector<LogEntry> entries, const char* now,
                 const std::string& class_key = "oil_polyurethane") {
  Job job = sample_job(class_key);
  job.history.file = "sample.log.jsonl";
  job.history.entries = std::move(entries);
  const Plan plan = planned_again(std::move(job), now);
  return oily_rags(plan.job, plan.list, plan.now);
}

TEST_CASE("rags are out from the coat on until the log has them dealt with, weeks if need be") {
  const LogEntry first = coat(1, back_1, "2027-04-06T19:00Z");
  for (const char* later : {"2027-04-06T19:10Z", "2027-04-06T20:30Z", "2027-04-27T08:00Z"})
    CHECK(rags_of({first}, later).out_since == instant("2027-04-06T19:00Z"));
  const LogEntry cleared = entry(2, LogKind::rags, "", "2027-04-06T22:00Z");
  const OilyRags after = rags_of({first, cleared}, "2027-04-07T08:00Z");
  CHECK_FALSE(after.out_since);
  CHECK(after.dealt_with == instant("2027-04-06T22:00Z"));
}

TEST_CASE("a coat after the rags were dealt with leaves new ones") {
  const OilyRags rags = rags_of(
      {coat(1, back_1, "2027-04-06T19:00Z"), entry(2, LogKind::rags, "", "2027-04-06T22:00Z"),
       coat(3, show_1, "2027-04-07T19:00Z")},
      "2027-04-07T19:10Z");
  CHECK(rags.out_since == instant("2027-04-07T19:00Z"));
}

TEST_CASE(
    "sanding a coat that dries by oxidation leaves dust that heats itself, bare wood does not") {
  // Source: NFPA tip sheet on oily rags (rags, pads and sanding dust).
  const Plan plan = planned_log({}, "2027-04-05T18:00Z");
  for (const Operation& op : plan.list.operations) {
    CAPTURE(op.key);
    const bool leaves = op.kind == OperationKind::coat || op.kind == OperationKind::sand_between;
    CHECK(leaves_oily_rags(plan.job, plan.list, op) == leaves);
  }
}

TEST_CASE("oil that is wiped off, stain and thinned varnish leave oily rags, waterborne does not") {
  for (const char* oily : {"hardwax_oil", "drying_oil", "raw_drying_oil", "oil_stain",
                           "wiping_varnish", "long_oil_varnish", "oil_polyurethane"}) {
    CAPTURE(oily);
    CHECK(class_of(sample_job().data, oily).dries_by_oxidation);
  }
  const OilyRags none = rags_of({coat(1, back_1, "2027-04-06T19:00Z")}, "2027-04-06T19:10Z",
                                "waterborne_polyurethane");
  CHECK_FALSE(none.out_since);
}

TEST_CASE("a log of rags where nothing oily was done is no reminder") {
  const OilyRags rags =
      rags_of({entry(1, LogKind::rags, "", "2027-04-06T18:00Z")}, "2027-04-06T19:00Z");
  CHECK_FALSE(rags.out_since);
  CHECK_FALSE(rags.dealt_with);
}

}  // namespace
}  // namespace tackfree
