// Early coats: what it costs that a coat was put on, at the person's wish, before it should be.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// The standing plan of a job with a shorter log, as of then, with what is known of early coats.
using StandingAt = std::function<std::optional<Plan>(
    Job job, Instant now, const std::map<std::string, EarlyCoat>& early)>;

/// Fills Plan::early for coats of the log that were insisted on before what they wait for was over:
/// each counts as on from the hour at which the plan of that time would have had it on, and as
/// thick as itself with what was still to dry under it. So nobody is ready sooner for not waiting.
/// `given` is the job as it was read. Source: assumed; practice knows only that it takes longer.
/// Each such plan may take half of what is left of `effort`, so that there is always more.
void price_early_coats(Plan& plan, const Job& given, const StandingAt& standing_at,
                       solver::Effort& effort);

/// Marks early coats in the list, and sanding below them, which there was no time for, as left out.
void mark_early_coats(Plan& plan);

/// A warning for each early coat, and for each coat that the log has over one that had to be sanded
/// and was not: what can come of it, and what to do.
std::vector<Note> early_coat_notes(const Plan& plan);

}  // namespace tackfree
