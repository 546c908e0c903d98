// Solve: the solver's answer to a bridged problem, proved for one person, sought for several.
#pragma once

#include "tackfree/schedule/bridge.hpp"

#include <optional>

namespace tackfree {

struct Solved {
  solver::Solution solution;
  solver::Worth worth;
  /// For one person: what is proved of it. The searches that prove know no people with hours of
  /// their own.
  std::optional<Proof> proof;
};

/// The same problem has the same answer on every machine: the search ends by work done, not by
/// time.
Solved solve(const Bridge& bridge);

/// A schedule soon, with nothing proved.
solver::Solution solved_roughly(const Bridge& bridge);

}  // namespace tackfree
