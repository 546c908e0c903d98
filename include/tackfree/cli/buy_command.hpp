// Buy command: what to buy for a job, without the rest of its plan.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/exit_code.hpp"

namespace tackfree {

/// Exits as `plan` does, and keeps no plan.
ExitCode buy_command(const Options& options, AskedJob asked, const Streams& to, Problems& problems);

}  // namespace tackfree
