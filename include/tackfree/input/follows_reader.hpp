// Follows reader: which class may follow which, what may be done last, and who keeps to it.
#pragma once

#include "tackfree/input/figure_reader.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <vector>

namespace tackfree {

/// The rules of follows.json, in order. A class that is not among `classes` is a Problem.
std::vector<FollowRule> read_follow_rules(JsonCursor& file, const std::vector<Coating>& classes,
                                          const SourceNames& sources);

/// Rule 5: reports every step of a system that must not follow the one before it, with the remedy,
/// and every system that ends with a coating which is no finish alone.
void check_systems_hold(const Job& job, Problems& problems);

/// The entries of finishing_touches.json.
std::vector<FinishingTouch> read_touches(JsonCursor& file, const SourceNames& sources);

/// A touch for films after a coating that builds none is a Problem.
void check_touches(const Job& job, Problems& problems);

}  // namespace tackfree
