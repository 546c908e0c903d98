// Follows reader: which class may follow which, and whether a job's systems keep to it.
#pragma once

#include "tackfree/input/figure_reader.hpp"
#include "tackfree/model/job.hpp"

#include <vector>

namespace tackfree {

/// The rules of follows.json, in order. A class that is not among `classes` is a Problem.
std::vector<FollowRule> read_follow_rules(JsonCursor& file, const std::vector<Coating>& classes,
                                          const SourceNames& sources);

/// Rule 5: reports every step of a system that must not follow the one before it, with the remedy,
/// and every system that ends with a coating which is no finish alone.
void check_systems_hold(const Job& job, Problems& problems);

}  // namespace tackfree
