// Remedies: the least change of each kind that gives the first step without time a date.
#pragma once

#include "tackfree/plan/remedy.hpp"
#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <vector>

namespace tackfree {

/// For the first step of `work` that waits for no other and has no time: the room warmer (by 1 C up
/// to 15, or 2 F up to 28) or drier (by 5 points of humidity up to 40) around one coat, and
/// throughout where that does not date everything; and one evening longer (by 30 min up to 3 h).
/// Each was planned and holds; with a step less the same search finds no time. `job` is what it
/// was made from, `now` as of when. What is tried is taken off `effort`; when nothing is left,
/// there are fewer remedies.
std::vector<Remedy> remedies(const DatedWork& work, const Job& job, Instant now,
                             solver::Effort& effort);

}  // namespace tackfree
