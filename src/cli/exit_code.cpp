#include "tackfree/cli/exit_code.hpp"

#include "tackfree/plan/work_at_hand.hpp"

namespace tackfree {

ExitCode exit_code(const DatedWork& work) {
  return work.schedule.unplaced.empty() ? exit_done : exit_not_plannable;
}

}  // namespace tackfree
