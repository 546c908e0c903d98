// Log command: what the command line reports, understood, shown and written as a line of the log.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/exit_code.hpp"

namespace tackfree {

/// Nothing is written where there are Problems.
ExitCode log_command(const Options& options, AskedJob asked, const Streams& to, Problems& problems);

}  // namespace tackfree
