// Planned log: the plan that goes on from lines of a log, for tests.
#pragma once

#include "tackfree/plan/make_plan.hpp"

#include <utility>
#include <vector>

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

inline Plan planned_again(Job job, const char* now) {
  Problems problems;
  auto plan = make_plan(std::move(job), instant(now), problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  REQUIRE(plan);
  return std::move(*plan);
}

inline Plan planned_log(std::vector<LogEntry> entries, const char* now) {
  return planned_again(logged_job(std::move(entries)), now);
}

inline LastPlan as_last(const Plan& plan) {
  LastPlan last{plan.job.id, plan.now, plan.schedule.ready_at, {}, {}};
  for (const DatedStep& step : plan.schedule.steps) {
    const Operation& op = plan.list.operations[step.operation];
    last.steps.push_back({op.key, op.key, {step.begin(), step.end()}, op.done.has_value()});
  }
  return last;
}

}  // namespace tackfree::testing
