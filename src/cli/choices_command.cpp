#include "tackfree/cli/choices_command.hpp"

#include "tackfree/cli/output_files.hpp"
#include "tackfree/cli/problem_list.hpp"
#include "tackfree/cli/progress_line.hpp"
#include "tackfree/export/choices_json.hpp"
#include "tackfree/logged/left_out.hpp"
#include "tackfree/plan/choices.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/remedies.hpp"
#include "tackfree/text/screens.hpp"
#include "tackfree/words/planning_words.hpp"

#include <optional>
#include <string>
#include <utility>

namespace tackfree {

namespace {

/// Tells on the terminal what is being worked out, where that takes a while.
std::optional<Choices> asked_choices(const AskedJob& asked, const Streams& to, Problems& problems) {
  ProgressLine line(to.progress);
  const auto stage = [&](const PlanningNow& now) { line.at(planning_words(now)); };
  stage({PlanningStage::dates});
  auto found = choices_of(asked.job, asked.now, problems, stage);
  if (!found) return std::nullopt;
  solver::Effort more{least_effort};
  found->remedies = remedies(found->ways.front(), asked.job, asked.now, more);
  return found;
}

}  // namespace

ExitCode choices_command(const Options& options, const AskedJob& asked, const Streams& to,
                         Problems& problems) {
  const auto found = asked_choices(asked, to, problems);
  if (!found) return exit_wrong_input;
  const Way& soonest = found->ways.front();
  print_left_out(left_out_problems(soonest.job), to.err);
  if (options.json_file) write_or_print(*options.json_file, choices_json(*found), to.out, problems);
  if (!prints_a_file(options)) to.print(choices_text(*found, to.columns, to.ink));
  return exit_code(soonest);
}

}  // namespace tackfree
