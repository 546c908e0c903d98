// Early coats: coats that went on, at the person's wish, before they should have, marked and told.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <map>
#include <string>
#include <vector>

namespace tackfree {

/// What a coat and its dusting off wait for, and what turning and sanding before them wait for in
/// turn.
std::vector<Wait> waits_of_coat(const OperationList& list, std::size_t coat);

/// Marks early coats in the list, and sanding below them, which there was no time for, as left out.
void mark_early_coats(OperationList& list, const std::map<std::string, EarlyCoat>& early);

/// A warning for each early coat, and for each coat that the log has over one that had to be sanded
/// and was not: what can come of it, and what to do.
std::vector<Note> early_coat_notes(const Plan& plan);

}  // namespace tackfree
