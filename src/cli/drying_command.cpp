#include "tackfree/cli/drying_command.hpp"

#include "tackfree/cli/output_files.hpp"
#include "tackfree/cli/problem_list.hpp"
#include "tackfree/export/drying_json.hpp"
#include "tackfree/logged/left_out.hpp"
#include "tackfree/plan/coat_outlook.hpp"
#include "tackfree/text/screens.hpp"

#include <algorithm>

namespace tackfree {

ExitCode drying_command(const Options& options, const AskedJob& asked, const Streams& to,
                        Problems& problems) {
  const Job& job = asked.job;
  print_left_out(left_out_problems(job), to.err);
  const auto named = std::ranges::find(job.coatings, options.coating, &Coating::name);
  const auto coating = static_cast<std::size_t>(named - job.coatings.begin());
  const auto outlook = coat_outlook(job, coating, asked.at, asked.now, problems);
  if (!outlook) return exit_wrong_input;
  if (options.json_file)
    write_or_print(*options.json_file, outlook_json(job, *outlook), to.out, problems);
  if (!prints_a_file(options)) to.print(outlook_text(job, *outlook, to.columns, to.ink));
  return exit_done;
}

}  // namespace tackfree
