// Run: the whole program as a function of its arguments and two streams.
#pragma once

#include "tackfree/base/file_identity.hpp"
#include "tackfree/cli/exit_code.hpp"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// What is known of the terminal that is written to; a file is as the default.
struct Terminal {
  int columns = 80;
  bool coloured = false;
  std::ostream* progress = nullptr;  ///< the terminal that errors go to; nothing for a file
  std::optional<FileIdentity> printed_to = {};  ///< the file that output goes to, if it is one
};

/// Runs `tackfree` with `arguments` (without the program's name), and flushes `out`. Comes to an
/// ExitCode.
int run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err,
        const Terminal& terminal = {});

}  // namespace tackfree
