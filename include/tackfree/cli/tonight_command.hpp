// Tonight command: what to do now or next, on one screen.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/exit_code.hpp"

namespace tackfree {

/// A reading of the air on the command line counts for now, and is not written down.
ExitCode tonight_command(const Options& options, AskedJob asked, const Streams& to,
                         Problems& problems);

}  // namespace tackfree
