// Conditioned air reader: when the person warms or dries the room, and by how much.
#pragma once

#include "tackfree/model/air.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <optional>

namespace tackfree {

/// One object of `air.conditioned`; times are local to `zone`. Nothing, with Problems, where it
/// changes nothing or only one end of its time is given.
std::optional<ConditionedAir> read_conditioned_air(JsonCursor& object, const Zone& zone);

}  // namespace tackfree
