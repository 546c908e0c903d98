#include "tackfree/cli/exit_code.hpp"

#include "tackfree/plan/plan.hpp"

namespace tackfree {

ExitCode exit_code(const Plan& plan) {
  return plan.schedule.unplaced.empty() ? exit_done : exit_not_plannable;
}

}  // namespace tackfree
