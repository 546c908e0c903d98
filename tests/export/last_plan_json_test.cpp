#include "tackfree/export/last_plan_json.hpp"

#include "tackfree/input/last_plan_reader.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("what is kept of a plan is read again as it was, whatever is written in the job") {
  for (const SmallNames& names : {SmallNames{}, SmallNames{.batch = hostile_name()}}) {
    Plan plan = small_plan(names);
    const LastPlan first = as_last_plan(plan);
    REQUIRE(first.steps.size() == plan.schedule.steps.size());
    REQUIRE_FALSE(first.events.empty());
    plan.job.last_plan = first;
    Problems problems;
    const std::string text = kept_plan_json(plan, "0af");
    const auto kept = parse_kept_plan(text, "kept.json", plan.job.id, problems);
    for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
    REQUIRE(kept);
    CHECK(kept->digest == "0af");
    REQUIRE(kept->before);
    for (const LastPlan& read : {kept->plan, *kept->before}) {
      CHECK(read.now == plan.now);
      CHECK(read.ready_at == plan.schedule.ready_at);
      REQUIRE(read.steps.size() == first.steps.size());
      CHECK(read.steps.front().time.begin == first.steps.front().time.begin);
      CHECK(read.steps.front().time.end == first.steps.front().time.end);
      CHECK(read.steps.front().key == first.steps.front().key);
      REQUIRE(read.events.size() == first.events.size());
      CHECK(read.events.front().uid == first.events.front().uid);
    }
    // The second time it is written from what was read, and must not differ.
    plan.job.last_plan = kept->before;
    CHECK(kept_plan_json(plan, "0af") == text);
  }
}

}  // namespace tackfree
