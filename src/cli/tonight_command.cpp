#include "tackfree/cli/tonight_command.hpp"

#include "tackfree/cli/kept_plan.hpp"
#include "tackfree/cli/problem_list.hpp"
#include "tackfree/evening/tonight.hpp"
#include "tackfree/logged/left_out.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/make_plan.hpp"
#include "tackfree/plan/remedies.hpp"
#include "tackfree/text/screens.hpp"

#include <optional>
#include <utility>
#include <vector>

namespace tackfree {

namespace {

void add_reading_of_now(const LogOptions& told, Instant now, Job& job) {
  if (!told.temp_c && !told.temp_f) return;
  LogEntry reading{.kind = LogKind::air, .written_at = now, .at = now};
  reading.temperature = told.temp_c ? celsius(*told.temp_c) : fahrenheit(*told.temp_f);
  if (told.humidity_pct) reading.humidity = humidity_percent(*told.humidity_pct);
  job.history.entries.push_back(std::move(reading));
}

}  // namespace

ExitCode tonight_command(const Options& options, AskedJob asked, const Streams& to,
                         Problems& problems) {
  Job& job = asked.job;
  const KeptPlanFile kept(options, job, asked.now);
  to.err << kept.fault();
  const std::vector<LastPlan> planned = job.last_plan ? std::vector{*job.last_plan} : kept.plans();
  if (!planned.empty()) job.last_plan = planned.front();
  add_reading_of_now(options.log, asked.now, job);
  solver::Effort effort{most_effort};
  std::optional<Plan> plan = make_plan(job, asked.now, problems, {}, &effort);
  if (!plan) return exit_wrong_input;
  print_left_out(left_out_problems(plan->job), to.err);
  Tonight answer = tonight(*plan);
  solver::Effort what_if = effort_after(effort);
  answer.unlogged = unlogged(*plan, job, planned, asked.now, what_if);
  plan->remedies = remedies(*plan, job, asked.now, what_if);
  to.print(tonight_text(*plan, answer, to.columns, to.ink));
  return exit_code(*plan);
}

}  // namespace tackfree
