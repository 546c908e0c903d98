#include "tackfree/cli/buy_command.hpp"

#include "tackfree/cli/asked_plan.hpp"
#include "tackfree/cli/output_files.hpp"
#include "tackfree/export/plan_json.hpp"
#include "tackfree/text/plan_text.hpp"

#include <utility>

namespace tackfree {

ExitCode buy_command(const Options& options, AskedJob asked, const Streams& to,
                     Problems& problems) {
  const auto planned = asked_plan(options, std::move(asked), to, problems);
  if (!planned) return exit_wrong_input;
  const Plan& plan = planned->plan;
  if (options.json_file)
    write_or_print(*options.json_file, json_shopping_list(plan), to.out, problems);
  if (!prints_a_file(options)) to.print(text_shopping_list(plan, to.columns, to.ink));
  return exit_code(plan);
}

}  // namespace tackfree
