// Last plan: any text as a plan that was written as JSON before.

#include "tackfree/input/last_plan_reader.hpp"

#include "fuzz/fuzzed.hpp"

void tackfree::fuzz::read(std::string_view text) {
  Problems problems;
  const auto plan = parse_last_plan(text, "plan.json", "bench", problems);
  must(plan.has_value() == problems.empty(), "there is a plan unless there are problems");
  must_help(problems, "plan.json");
  must(!plan || plan->job_id == "bench", "the plan is of the job");
}
