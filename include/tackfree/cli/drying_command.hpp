// Drying command: how a coat put on at one hour would dry, and what speaks against it.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/exit_code.hpp"

namespace tackfree {

/// In the air of the job, with the readings of its log.
ExitCode drying_command(const Options& options, const AskedJob& asked, const Streams& to,
                        Problems& problems);

}  // namespace tackfree
