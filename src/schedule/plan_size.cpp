#include "tackfree/schedule/plan_size.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The divisors of an hour: what a grid can be.
constexpr std::array<int, 12> grids{1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30, 60};

std::int64_t days_of(const Job& job) {
  return (whole_minutes_up(job.horizon) + one_day - Minutes(1)) / one_day;
}

/// The ways out that there are, in one sentence.
std::string smaller(const Job& job, std::int64_t steps) {
  const std::int64_t minutes = days_of(job) * one_day.count();
  const auto coarse = std::ranges::find_if(
      grids, [&](int grid) { return minutes / grid * steps <= most_points_of_steps; });
  const std::int64_t days =
      most_points_of_steps / std::max<std::int64_t>(1, steps) * job.grid.count() / one_day.count();
  std::string ways;
  if (coarse != grids.end()) ways = fmt::format("\"grid_min\": {}", *coarse);
  if (days >= 1) ways += fmt::format("{}\"horizon_days\": {}", ways.empty() ? "" : " or ", days);
  if (!ways.empty()) ways += " makes it small enough, and so do ";
  return ways + "fewer batches in one job";
}

}  // namespace

void check_plan_size(const Job& job, std::size_t steps, Problems& problems) {
  if (job.batches.size() > most_batches || steps > most_steps) {
    problems.push_back(
        {.key = "batches",
         .wanted = fmt::format("wanted at most {} batches and lots, and {} steps of work, in one "
                               "plan; this one has {} and {}",
                               most_batches, most_steps, job.batches.size(), steps),
         .hint = "plan some of the batches in a job of their own"});
    return;
  }
  const auto count = static_cast<std::int64_t>(steps);
  const std::int64_t points = days_of(job) * one_day.count() / job.grid.count();
  if (points * count <= most_points_of_steps) return;
  problems.push_back(
      {.key = "horizon_days",
       .wanted =
           fmt::format("wanted a smaller plan; {} days ahead on a grid of {} min are too many for "
                       "{} steps of work",
                       days_of(job), job.grid.count(), steps),
       .hint = smaller(job, count)});
}

}  // namespace tackfree
