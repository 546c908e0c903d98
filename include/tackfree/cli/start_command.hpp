// Start command: a small job to begin with, written into a new folder.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/exit_code.hpp"
#include "tackfree/cli/options.hpp"
#include "tackfree/cli/streams.hpp"

namespace tackfree {

/// Writes nothing, with a Problem, into a folder that has something in it.
ExitCode start_command(const Options& options, const Streams& to, Problems& problems);

}  // namespace tackfree
