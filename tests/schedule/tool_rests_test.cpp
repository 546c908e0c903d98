#include "tackfree/schedule/tool_rests.hpp"

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::Scheduled;

/// The first session with a second coat put so much later into it.
Scheduled with_pause(Minutes pause, const std::string& class_key, const std::string& method) {
  Job job = testing::sample_job(class_key);
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].method = method;
  Scheduled s = testing::scheduled(job);
  Session& first = s.schedule.sessions.front();
  const Session second = s.schedule.sessions.at(1);
  first.steps.push_back(second.steps.front());
  DatedStep& before = s.schedule.steps[first.steps.front()];
  DatedStep& after = s.schedule.steps[first.steps.back()];
  const Instant begin = before.dries_from.value_or(before.end()) + pause;
  after.pieces = {{begin, begin + Minutes(30)}};
  s.schedule.sessions = {first};
  return s;
}

std::vector<ToolRest> rests_of(const Scheduled& s) { return tool_rests(s.job, s.list, s.schedule); }

TEST_CASE("a tool lies open for half an hour, and is wrapped or cleaned for longer") {
  CHECK(rests_of(with_pause(Minutes(30), "oil_polyurethane", "brush")).empty());
  const auto wrapped = rests_of(with_pause(Minutes(35), "oil_polyurethane", "brush"));
  REQUIRE(wrapped.size() == 1);
  CHECK(wrapped[0].wrapped);
  CHECK(wrapped[0].tool == Tool::brush);
  CHECK(wrapped[0].cleaning.length() == Minutes(0));
  const auto day = rests_of(with_pause(Minutes(12 * 60 + 5), "oil_polyurethane", "brush"));
  REQUIRE(day.size() == 1);
  CHECK_FALSE(day[0].wrapped);
}

TEST_CASE("what hardens in its pot is never kept wrapped, and no cloth or gun is") {
  struct Case {
    const char *class_key, *method;
    Tool tool;
  };
  for (const Case& each : {Case{"two_component_polyurethane", "foam_roller", Tool::roller},
                           Case{"oil_polyurethane", "wipe", Tool::cloth},
                           Case{"oil_polyurethane", "hvlp", Tool::gun}}) {
    CAPTURE(each.class_key);
    CAPTURE(each.method);
    const Scheduled s = with_pause(Minutes(120), each.class_key, each.method);
    const auto rests = rests_of(s);
    REQUIRE(rests.size() == 1);
    CHECK_FALSE(rests[0].wrapped);
    CHECK(rests[0].cleaning.length() > Minutes(0));
    CHECK(rests[0].tool == each.tool);
    CHECK(rests[0].pause.length() == Minutes(120));
  }
}

TEST_CASE("every pause of a plan's sessions says what becomes of the tool") {
  const Scheduled s = testing::scheduled(testing::sample_job());
  CHECK(s.schedule.tool_rests.size() == rests_of(s).size());
}

}  // namespace
}  // namespace tackfree
