// Air nodes: what is known of the air at points in time, and the straight lines between them.
#pragma once

#include "tackfree/base/temperature.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"

namespace tackfree {

struct AirState {
  Temperature temperature;
  Pressure vapour;
};

/// The air at one time.
struct AirNode {
  Instant at;
  AirState state;
};

/// How much of `way` lies before `at`: 0 at its begin, 1 at its end.
double share_of_way(Interval way, Instant at);

/// The air on the straight line from `a` to `b`, at `at`; outside, that of the nearer one.
AirState state_between(const AirNode& a, const AirNode& b, Instant at);

}  // namespace tackfree
