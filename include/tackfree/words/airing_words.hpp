// Airing words: when the room stands how far open, by the clock.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// `door open 6:30 to 8:55 pm, then door ajar until 10:55 pm`; of a span that is on at `seen_from`
/// only the end. Empty without spans.
std::string airing_words(const std::vector<AiringSpan>& spans, Instant seen_from,
                         const Figures& figures);

/// By the job's own habit, over all dated coats; empty where it gives none.
std::vector<AiringSpan> airing_of(const Plan& plan);

}  // namespace tackfree
