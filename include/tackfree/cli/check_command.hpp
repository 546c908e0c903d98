// Check command: every mistake in the files of a job, the log too.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/exit_code.hpp"

namespace tackfree {

/// A line of the log that does not count is a mistake here.
ExitCode check_command(const Options& options, AskedJob asked, const Streams& to,
                       Problems& problems);

}  // namespace tackfree
