// Gate words: a rule of the air that keeps a coat off, with its limit, in the person's units.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>
#include <string_view>

namespace tackfree {

/// `too cold to coat (under 50 °F)`.
std::string gate_words(Gate gate, const CoatingLimits& limits, const Figures& figures);

/// `It is too cold to coat until 9:00 am (the limit is 50 °F)`: of the hours `until`, without a
/// full stop.
std::string gate_sentence(Gate gate, const CoatingLimits& limits, std::string_view until,
                          const Figures& figures);

/// `it is too cold to coat the seat`: what keeps a piece waiting.
std::string gate_clause(Gate gate, std::string_view piece);

}  // namespace tackfree
