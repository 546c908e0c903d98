// Slowness: how much longer than estimated this job's coats take to dry, by the log's trials.
#pragma once

#include "tackfree/learning/thirst.hpp"

#include <vector>

namespace tackfree {

/// Prior width of the logarithm of the drying that a coating really needs over what its label says,
/// by its law: 0.30 where oxygen of the air dries it, else 0.20. Source: assumed.
double slowness_spread(const Coating& coating);

/// On the drying that the label asks for, for each of Job::coatings. A trial that failed says that
/// the coat needs more than it had had by then; one that was passed, no more. One that was passed
/// sooner than estimated counts as what it had had; one that was passed later after it had failed,
/// as the middle of the logarithms, where that is more than earlier jobs knew; a failed one alone
/// as the mean of what is known by then leaves over it. So no trial that failed makes a coat
/// quicker. Normal prior of mean 0 as above, reading spread 0.50: how far one coat speaks for the
/// next (assumed).
std::vector<Learnt> learnt_slowness(const Job& job, const std::vector<CoatTried>& tried);

/// How much drying a coat is expected to need that was not dry after `had`, all as multiples of
/// what the label says; `factor` is what is known of the coating.
double expected_need(const Coating& coating, double factor, double had);

}  // namespace tackfree
