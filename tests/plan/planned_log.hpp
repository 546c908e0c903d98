// Planned log: the plan that goes on from lines of a log, for tests.
#pragma once

#include "tackfree/plan/make_plan.hpp"

#include <utility>
#include <vector>

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

inline Plan planned_log(std::vector<LogEntry> entries, const char* now) {
  Problems problems;
  auto plan = make_plan(logged_job(std::move(entries)), instant(now), problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  REQUIRE(plan);
  return std::move(*plan);
}

}  // namespace tackfree::testing
