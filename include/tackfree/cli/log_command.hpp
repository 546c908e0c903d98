// Log command: what the command line reports, understood, shown and written as a line of the log.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/options.hpp"
#include "tackfree/model/job.hpp"

#include <string>

namespace tackfree {

/// The answer to `tackfree log ...` as of `now`, after the line has been written; empty, with
/// Problems, where nothing was.
std::string logged(const Options& options, const Job& job, Instant now, int columns,
                   Problems& problems);

}  // namespace tackfree
