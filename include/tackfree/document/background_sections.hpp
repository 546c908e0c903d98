// Text background: how steps are done, notes, cautions, and where figures come from.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// The advice that the coatings call for.
void write_advice(Page& page, const Plan& plan);

/// Each distinct how-to text once, with the number that the days refer to; then the advice.
void write_how_to(Page& page, const Plan& plan, const HowTo& how_to);

void write_notes(Page& page, const std::vector<Note>& notes, const Job& job,
                 const OperationList& list, const Figures& figures);
void write_cautions(Page& page, const Plan& plan);

/// The main figures of each coating and method in use, grouped by origin and source.
void write_sources(Page& page, const Plan& plan, const Figures& figures);

}  // namespace tackfree
