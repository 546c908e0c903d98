// Unplaced words: why a step found no time, with a way out.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// `too cold to coat on all 8 days you can work within the plan; heat or dry the room, ...`
std::string unplaced_words(const Unplaced& unplaced, const DatedWork& work);

/// Each of the rules that cannot hold together: `no coating on Sat 10 Apr`.
std::vector<std::string> conflict_words(const Unplaced& unplaced, const DatedWork& work,
                                        const Figures& figures);

}  // namespace tackfree
