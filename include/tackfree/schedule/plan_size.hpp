// Plan size: is there little enough to date for an answer soon, and what would make it so?
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/job.hpp"

#include <cstddef>
#include <cstdint>

namespace tackfree {

/// Batches and lots, and steps to date, in one plan.
inline constexpr std::size_t most_batches = 200;
inline constexpr std::size_t most_steps = 1'200;
/// Steps times points of the grid: what waits, dust and space are worked out for.
inline constexpr std::int64_t most_points_of_steps = 16'000'000;

/// A Problem for a job that is larger, with what would make it small enough.
void check_plan_size(const Job& job, std::size_t steps, Problems& problems);

}  // namespace tackfree
