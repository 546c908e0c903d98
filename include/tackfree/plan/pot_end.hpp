// Pot end: until when what was mixed for a two-part coat can be put on.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <cstddef>
#include <optional>

namespace tackfree {

/// Of the first pot, which is mixed when the coat is begun, in the air of that hour. Nothing for a
/// coating without a pot life. `operation` is an index into OperationList::operations.
std::optional<Instant> pot_end(const Plan& plan, std::size_t operation, Instant begun);

}  // namespace tackfree
