// Log command: what the command line reports, understood, shown and written as a line of the log.
#pragma once

#include "tackfree/base/appended_file.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/cli/options.hpp"
#include "tackfree/model/job.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// What `tackfree log ...` came to.
struct Logged {
  std::string text;     ///< what was understood, or the log
  std::string written;  ///< that a line was written, and where; empty where none was
  Problems left_out;    ///< what is wrong with the lines of the log that do not count
};

/// The answer to `tackfree log ...` as of `now`, after the line has been written. Nothing is
/// written where there are Problems. What is understood follows from the log as it is while no
/// other program writes it.
Logged logged(const Options& options, Job job, Instant now, const LockPatience& patience,
              int columns, Problems& problems);

}  // namespace tackfree
