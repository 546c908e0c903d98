// Choices command: what fewer sessions of coating would cost in days.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/exit_code.hpp"

namespace tackfree {

/// A plan for each choice.
ExitCode choices_command(const Options& options, const AskedJob& asked, const Streams& to,
                         Problems& problems);

}  // namespace tackfree
