// Logged plan: the sample job planned on from a log, for tests of what is printed.
#pragma once

#include "tackfree/plan/make_plan.hpp"

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

inline Plan logged_plan(Job job, const char* now) {
  Problems problems;
  auto plan = make_plan(std::move(job), instant(now), problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  REQUIRE(plan);
  return std::move(*plan);
}

}  // namespace tackfree::testing
