// Shelf command: tells what is in the tins now, and brings the shared shelf's file up to date.
#pragma once

#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/exit_code.hpp"
#include "tackfree/cli/streams.hpp"

namespace tackfree {

/// What the log says is left. With --write the file of the shared shelf has it too, in this job's
/// name; a second time changes nothing.
ExitCode shelf_command(const Options& options, const AskedJob& asked, const Streams& to,
                       Problems& problems);

}  // namespace tackfree
