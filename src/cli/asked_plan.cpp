#include "tackfree/cli/asked_plan.hpp"

#include "tackfree/cli/progress_line.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/make_plan.hpp"
#include "tackfree/plan/remedies.hpp"
#include "tackfree/words/planning_words.hpp"

#include <string>
#include <utility>

namespace tackfree {

std::optional<AskedPlan> asked_plan(const Options& options, AskedJob asked, const Streams& to,
                                    Problems& problems) {
  ProgressLine line(to.progress);
  const auto stage = [&](const PlanningNow& now) { line.at(planning_words(now)); };
  Job& job = asked.job;
  KeptPlanFile kept(options, job, asked.now);
  if (!options.last_plan) job.last_plan = kept.last_plan();
  solver::Effort effort{most_effort};
  std::optional<Plan> plan = make_plan(job, asked.now, problems, stage, &effort);
  if (plan && plan->room && plan->room->proposed && options.airing == AiringChoice::proposed) {
    job.room.airing = plan->room->proposed;
    effort = effort_after(effort);
    plan = make_plan(job, asked.now, problems, stage, &effort);
  }
  if (!plan) return std::nullopt;
  if (!plan->schedule.unplaced.empty()) {
    effort = effort_after(effort);
    plan->remedies = remedies(*plan, job, asked.now, effort);
  }
  return AskedPlan{std::move(*plan), std::move(kept)};
}

}  // namespace tackfree
