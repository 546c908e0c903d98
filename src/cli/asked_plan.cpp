#include "tackfree/cli/asked_plan.hpp"

#include "tackfree/cli/problem_list.hpp"
#include "tackfree/cli/progress_line.hpp"
#include "tackfree/logged/left_out.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/make_plan.hpp"
#include "tackfree/plan/remedies.hpp"
#include "tackfree/words/planning_words.hpp"

#include <string>
#include <utility>

namespace tackfree {

namespace {

/// As the job and its options ask; the line on the terminal is gone when it returns.
std::optional<Plan> planned_as_asked(const Options& options, AskedJob& asked, const Streams& to,
                                     Problems& problems) {
  ProgressLine line(to.progress);
  const auto stage = [&](const PlanningNow& now) { line.at(planning_words(now)); };
  Job& job = asked.job;
  solver::Effort effort{most_effort};
  std::optional<Plan> plan = make_plan(job, asked.now, problems, stage, &effort);
  if (plan && plan->room && plan->room->proposed && options.airing == AiringChoice::proposed) {
    job.room.airing = plan->room->proposed;
    effort = effort_after(effort);
    plan = make_plan(job, asked.now, problems, stage, &effort);
  }
  if (plan && !plan->schedule.unplaced.empty()) {
    effort = effort_after(effort);
    plan->remedies = remedies(*plan, job, asked.now, effort);
  }
  return plan;
}

}  // namespace

std::optional<AskedPlan> asked_plan(const Options& options, AskedJob asked, const Streams& to,
                                    Problems& problems) {
  KeptPlanFile kept(options, asked.job, asked.now);
  if (!options.last_plan) asked.job.last_plan = kept.last_plan();
  std::optional<Plan> plan = planned_as_asked(options, asked, to, problems);
  if (!plan) return std::nullopt;
  print_left_out(left_out_problems(plan->job), to.err);
  to.err << kept.fault();
  return AskedPlan{std::move(*plan), std::move(kept)};
}

}  // namespace tackfree
