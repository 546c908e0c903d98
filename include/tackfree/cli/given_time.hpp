// Given time: points in time as the command line has them, in the zone of a job.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/job.hpp"

#include <optional>
#include <string>

namespace tackfree {

/// A time under the option `key`: local in the job's zone, or UTC. Nothing and a Problem when it is
/// none, the clocks skip it, or the job's horizon from it on passes what is known of zones.
std::optional<Instant> time_given(const std::string& key, const std::string& text, const Job& job,
                                  Problems& problems);

/// The same, and `now`, a clock time of today (`20:10`, `8:10 pm`), or one of yesterday
/// (`yesterday 20:10`).
std::optional<Instant> moment_given(const std::string& key, const std::string& text, const Job& job,
                                    Instant now, Problems& problems);

}  // namespace tackfree
