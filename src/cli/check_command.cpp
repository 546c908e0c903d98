#include "tackfree/cli/check_command.hpp"

#include "tackfree/logged/left_out.hpp"
#include "tackfree/words/display_text.hpp"

#include <fmt/format.h>

namespace tackfree {

ExitCode check_command(const Options& options, AskedJob asked, const Streams& to,
                       Problems& problems) {
  Job& job = asked.job;
  job.history = fitting_history(job, asked.now);
  problems = left_out_problems(job);
  if (!problems.empty()) return exit_wrong_input;
  to.print(fmt::format("{}: no mistakes found ({} parts, {} batches, {} coatings)\n",
                       clean(options.job_file.string()), job.parts.size(), job.batches.size(),
                       job.coatings.size()));
  return exit_done;
}

}  // namespace tackfree
