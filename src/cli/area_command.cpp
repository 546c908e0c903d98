#include "tackfree/cli/area_command.hpp"

#include "tackfree/cli/output_files.hpp"
#include "tackfree/cli/problem_list.hpp"
#include "tackfree/export/areas_json.hpp"
#include "tackfree/logged/left_out.hpp"
#include "tackfree/plan/areas.hpp"
#include "tackfree/text/area_text.hpp"

namespace tackfree {

ExitCode area_command(const Options& options, const AskedJob& asked, const Streams& to,
                      Problems& problems) {
  print_left_out(left_out_problems(asked.job), to.err);
  const Areas areas = areas_of(asked.job);
  if (options.json_file) write_or_print(*options.json_file, area_json(areas), to.out, problems);
  if (!prints_a_file(options)) to.print(area_text(areas, to.columns, to.ink));
  return exit_done;
}

}  // namespace tackfree
