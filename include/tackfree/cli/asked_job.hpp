// Asked job: what each command begins with: the job, read and found fit, and the time to plan from.
#pragma once

#include "tackfree/base/appended_file.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/cli/options.hpp"
#include "tackfree/cli/streams.hpp"
#include "tackfree/model/job.hpp"

#include <optional>

namespace tackfree {

/// A job without mistakes, with the last plan that the command line names, if it names one.
struct AskedJob {
  Job job;
  Instant now;  ///< --now, else the job's own, else the clock
  Instant at;   ///< --at, else now
};

/// Tells on `err` at once that a log is waited for.
LockPatience telling(std::ostream& err);

/// Nothing, with Problems, where a file has a mistake, an output would replace a file that is in
/// use, or an option does not fit the job.
std::optional<AskedJob> asked_job(const Options& options, const Streams& to, Problems& problems);

}  // namespace tackfree
