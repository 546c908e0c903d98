// Airing words: when the room stands how far open, by the clock.
#pragma once

#include "tackfree/plan/advised_airing.hpp"
#include "tackfree/words/figures.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// `open to outdoors 6:30 to 8:55 pm, then ajar to outdoors until 10:55 pm`; of a span that is on
/// at `seen_from` only the end. Empty without spans.
std::string airing_words(const std::vector<AiringSpan>& spans, Instant seen_from,
                         const Figures& figures);

/// How to air, of `own` and what the better habit asks for at the same time: at each hour the wider
/// of both where the job's habit is too little, and that it is; empty where nobody opens anything.
/// Without a stop at its end.
std::string airing_advice(const Plan& plan, const std::vector<AiringSpan>& own,
                          const std::vector<AiringSpan>& better, const Figures& figures);

}  // namespace tackfree
