// Area command: what there is to coat, by part, grain and side.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/exit_code.hpp"

namespace tackfree {

/// Works for a job that cannot be dated.
ExitCode area_command(const Options& options, const AskedJob& asked, const Streams& to,
                      Problems& problems);

}  // namespace tackfree
