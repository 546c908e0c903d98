#include "tackfree/air/air_nodes.hpp"

namespace tackfree {

double share_of_way(Interval way, Instant at) {
  return to_duration(at - way.begin) / to_duration(way.length());
}

AirState state_between(const AirNode& a, const AirNode& b, Instant at) {
  if (at <= a.at) return a.state;
  if (at >= b.at) return b.state;
  const double share = share_of_way({a.at, b.at}, at);
  return {a.state.temperature + (b.state.temperature - a.state.temperature) * share,
          a.state.vapour + (b.state.vapour - a.state.vapour) * share};
}

}  // namespace tackfree
