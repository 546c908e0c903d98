// Given time: points in time as the command line has them, in the zone of a job.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/job.hpp"

#include <optional>
#include <string>

namespace tackfree {

struct HoursTold {
  std::string on, from, until;
  bool from_now = false;
};

/// A time under the option `key`: local in the job's zone, or UTC. Nothing and a Problem when it is
/// none, the clocks skip it, or the job's horizon from it on passes what is known of zones.
std::optional<Instant> time_given(const std::string& key, const std::string& text, const Job& job,
                                  Problems& problems);

/// The same, and `now`, a clock time of today (`20:10`, `8:10 pm`), or one of yesterday
/// (`yesterday 20:10`) or of a date (`2027-04-05 8:10 pm`).
std::optional<Instant> moment_given(const std::string& key, const std::string& text, const Job& job,
                                    Instant now, Problems& problems);

/// Hours of one day as `log away` and `log free` have them: the day (`today`, `tomorrow`, a
/// weekday, the next one, or a date; empty: today) and two clock times, the second up to 24:00.
/// Without the first they begin with the day, or, `from_now`, today now; without the second they
/// end with it.
std::optional<Interval> hours_given(const HoursTold& told, const Job& job, Instant now,
                                    Problems& problems);

}  // namespace tackfree
