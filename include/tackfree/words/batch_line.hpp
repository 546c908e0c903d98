// Batch line: what is done to one batch and what it waits for, in the words of a chart of the days.
#pragma once

#include "tackfree/words/step_words.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// Work on one batch that belongs together: pieces of one local day with short breaks.
struct WorkGroup {
  Interval time;
  std::string mark;   ///< `sand, coat 2 back`
  std::string whole;  ///< every title, `sand before coat 2, P240; coat 2 of 3, back`
};

/// Batch `batch`, in order of time.
std::vector<WorkGroup> work_groups(const Plan& plan, const StepWords& words, std::size_t batch);

/// How a wait looks and is told: for drying, for air, or for the person and all else.
enum class WaitKind { drying, air, person };
WaitKind kind_of(HeldBy by);
/// `dries`, `air unfit for the coat`, `waits for your hours`, ...
std::string_view words_for(HeldBy by);

}  // namespace tackfree
