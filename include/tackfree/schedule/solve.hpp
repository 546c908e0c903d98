// Solve: the solver's answer to a posed problem, proved for one person, sought for several.
#pragma once

#include "tackfree/schedule/posed_problem.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <optional>

namespace tackfree {

struct Solved {
  solver::Solution solution;
  solver::Worth worth;
  /// What is proved of it. The searches that prove know no people with hours of their own: with
  /// several people only a date before which no schedule is ready.
  std::optional<Proof> proof;
  bool impossible = false;  ///< proved: every schedule leaves something out or has more sessions
};

/// The same problem has the same answer on every machine: the search ends by work done, not by
/// time. With `most_sessions` the best one in no more sessions is looked for, and what is proved is
/// proved of those; where none is found, the answer leaves something out or has more. What is done
/// is taken off `effort`.
Solved solve(const PosedProblem& posed, std::size_t most_sessions = solver::any_number,
             solver::Effort* effort = nullptr);

/// A schedule soon, with nothing proved.
solver::Solution solved_roughly(const PosedProblem& posed);

}  // namespace tackfree
