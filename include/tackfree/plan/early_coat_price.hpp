// Early coat price: what it costs that a coat was put on, at the person's wish, before its time.
#pragma once

#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>

namespace tackfree {

/// The work on a job with a shorter log, as of then, with what is known of early coats.
using WorkAsOf = std::function<std::optional<WorkAtHand>(
    const Job& job, Instant now, const std::map<std::string, EarlyCoat>& early)>;

/// Fills WorkAtHand::early for coats of the log that were insisted on before what they wait for was
/// over: each counts as on from the hour at which the plan of that time would have had it on, and
/// as thick as itself with what was still to dry under it. So nobody is ready sooner for not
/// waiting. `given` is the job as it was read. Source: assumed; practice knows only that it takes
/// longer. Each such plan may take half of what is left of `effort`, so that there is always more.
void price_early_coats(WorkAtHand& work, const Job& given, const WorkAsOf& work_as_of,
                       solver::Effort& effort);

}  // namespace tackfree
