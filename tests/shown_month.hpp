// Shown month: four weeks and some days of New York in which clocks go forward, for tests.
#pragma once

#include <optional>

#include "small_plan.hpp"

namespace tackfree {

inline Figures figures_beginning_on(std::optional<int> day) {
  Job job = small_job({}, UnitSystem::us);
  job.week_begins_on = day;
  return Figures(job);
}

inline const Interval month{at("2027-03-10T17:00:00Z"), at("2027-04-09T04:00:00Z")};

}  // namespace tackfree
