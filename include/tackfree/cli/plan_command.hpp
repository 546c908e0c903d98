// Plan command: the plan, printed, written to the files that were asked for, and kept.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/exit_code.hpp"

namespace tackfree {

/// Where there are Problems with the job nothing is printed; an output that cannot be written is a
/// Problem too.
ExitCode plan_command(const Options& options, AskedJob asked, const Streams& to,
                      Problems& problems);

}  // namespace tackfree
