// Note words: what a note is about and what it says.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>
#include <string_view>

namespace tackfree {

/// `film`, `damp air`, `recoat window`, ...
std::string_view subject_of(const Note& note);

/// Can what it tells of ruin the finish or the plan? Else it is a remark.
bool may_ruin(const Note& note);

/// A sentence or two. May hold words as the person wrote them.
std::string note_text(const Note& note, const Job& job, const OperationList& list,
                      const Figures& figures);

}  // namespace tackfree
