#include "tackfree/air/conditioned_air.hpp"

#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>

namespace tackfree {

namespace {

constexpr Humidity driest = humidity_percent(5);
/// As the clock's, which computes rates at these minutes and draws them straight between.
constexpr Minutes mark{5};

bool covers(const ConditionedAir& each, Instant at) {
  return !each.time || (at >= each.time->begin && at < each.time->end);
}

AirState conditioned(AirState air, const std::vector<ConditionedAir>& changes, Instant at) {
  for (const ConditionedAir& each : changes) {
    if (!covers(each, at)) continue;
    air.temperature = air.temperature + each.warmer;
    if (each.drier <= Humidity()) continue;
    const Pressure least = std::min(air.vapour, vapour_pressure(air.temperature, driest));
    air.vapour = std::max(least, air.vapour - vapour_pressure(air.temperature, each.drier));
  }
  return air;
}

Instant mark_up(Instant at) {
  const auto past = at.time_since_epoch() % mark;
  return past == Minutes(0) ? at : at + (mark - past);
}

/// The times of `room`, with the marks before and at each end of what is done to it.
std::vector<Instant> times_of(const std::vector<AirNode>& room,
                              const std::vector<ConditionedAir>& changes) {
  std::vector<Instant> times;
  times.reserve(room.size());
  for (const AirNode& node : room) times.push_back(node.at);
  for (const ConditionedAir& each : changes) {
    if (!each.time) continue;
    for (const Instant edge : {each.time->begin, each.time->end})
      for (const Instant at : {mark_up(edge) - mark, mark_up(edge)})
        if (at > room.front().at && at < room.back().at) times.push_back(at);
  }
  std::ranges::sort(times);
  times.erase(std::unique(times.begin(), times.end()), times.end());
  return times;
}

}  // namespace

std::vector<AirNode> conditioned_air(const std::vector<AirNode>& room,
                                     const std::vector<ConditionedAir>& conditioned_by) {
  if (conditioned_by.empty()) return room;
  std::vector<AirNode> better;
  std::size_t after = 1;
  for (const Instant at : times_of(room, conditioned_by)) {
    while (after + 1 < room.size() && room[after].at < at) ++after;
    const AirState state = state_between(room[after - 1], room[after], at);
    better.push_back({at, conditioned(state, conditioned_by, at)});
  }
  return better;
}

}  // namespace tackfree
