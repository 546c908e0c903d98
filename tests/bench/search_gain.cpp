// Search gain: each job as dated in one pass, in the few passes that the search starts from, and by
// the search, side by side. Run: build/release/tests/search_gain data/demo/*/*.json
#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/input/job_reader.hpp"
#include "tackfree/plan/make_work_at_hand.hpp"
#include "tackfree/schedule/make_schedule.hpp"
#include "tackfree/schedule/pose_problem.hpp"
#include "tackfree/schedule/solve.hpp"
#include "tackfree/solver/serial.hpp"

#include <fmt/format.h>

namespace {

using namespace tackfree;

/// When it is ready, in the job's own clock, and in how many sessions.
std::string found(const Job& job, const PosedProblem& posed, const solver::Solution& solution) {
  const solver::Worth worth = solver::worth(posed.problem, solution);
  if (worth.unplaced > 0 || worth.ready == solver::never)
    return fmt::format("{} steps have no time", worth.unplaced);
  return fmt::format("ready {}, {} sessions",
                     iso_local(posed.grid.at(worth.ready), job.calendar.zone), worth.sessions);
}

bool print_gain(const char* file) {
  Problems problems;
  auto job = read_job(FilesOnDisk(), file, {}, problems);
  auto plan =
      job ? make_work_at_hand(*job, job->now_at.value_or(Instant()), problems) : std::nullopt;
  if (!plan) {
    for (const Problem& problem : problems) fmt::print(stderr, "{}\n", to_text(problem));
    return false;
  }
  const PosedProblem posed =
      pose_problem(plan->job, plan->list, plan->air, drying_clocks(plan->job, plan->air),
                   {plan->now, plan->now + whole_minutes_up(plan->job.horizon)});
  fmt::print("{:<28}  one pass    {}\n", plan->job.name,
             found(plan->job, posed, solver::placed_by_earliest_start(posed.problem)));
  fmt::print("{:<28}  few passes  {}\n", "",
             found(plan->job, posed, solver::serial_schedule(posed.problem)));
  fmt::print("{:<28}  search      {}\n", "", found(plan->job, posed, solve(posed).solution));
  return true;
}

}  // namespace

int main(int count, char** files) {
  bool all = count > 1;
  for (int i = 1; i < count; ++i) all = print_gain(files[i]) && all;
  return all ? 0 : 1;
}
