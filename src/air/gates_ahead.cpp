#include "tackfree/air/gates_ahead.hpp"

#include "tackfree/air/kept_limits.hpp"

#include <algorithm>

namespace tackfree {

GatesAhead::GatesAhead(const CoatingLimits& limits, const AirSeries& air, const DryingClock& clock,
                       // NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
                       Instant from, Minutes putting_on, Minutes grid)
    : limits_(limits),
      air_(air),
      clock_(clock),
      from_(from),
      putting_on_(putting_on),
      grid_(grid) {}

GatesAhead::Counts GatesAhead::wrong_at(Instant at) const {
  const AirState state = air_.at(at);
  const Temperature surface = air_.surface_at(at);
  Counts counts{};
  counts[cold] =
      !is_warm_enough(std::min(state.temperature, surface), limits_.put_on_min.value) ? 1 : 0;
  counts[warm] =
      !is_cool_enough(std::max(state.temperature, surface), limits_.put_on_max.value) ? 1 : 0;
  counts[humid] = !is_dry_enough(state, limits_.humidity_max.value) ? 1 : 0;
  counts[near_dew] = near_dew_point(limits_, state, surface) ? 1 : 0;
  counts[under_hold] = !is_warm_enough(state.temperature, limits_.hold_min.value) ? 1 : 0;
  counts[cold_air] = !is_warm_enough(state.temperature, limits_.put_on_min.value) ? 1 : 0;
  return counts;
}

bool GatesAhead::ever(Wrong wrong, int first, int last) {
  // What lies beyond the series is not known.
  last = std::min(last, static_cast<int>((air_.covers().end - from_) / grid_));
  if (last < first) return false;
  while (static_cast<int>(before_.size()) <= last + 1) {
    Counts counts = wrong_at(from_ + static_cast<int>(before_.size() - 1) * grid_);
    for (std::size_t i = 0; i < counts.size(); ++i) counts.at(i) += before_.back().at(i);
    before_.push_back(counts);
  }
  const auto at = [&](int instant) { return before_[static_cast<std::size_t>(instant)][wrong]; };
  return at(last + 1) > at(first);
}

std::vector<Gate> GatesAhead::failing(int start) {
  const Instant finish = from_ + start * grid_ + putting_on_;
  const auto up_to = [&](Instant at) {  // the first instant of the grid that is not before
    return static_cast<int>((at - from_ + grid_ - Minutes(1)) / grid_);
  };
  const int finished = start + static_cast<int>(putting_on_ / grid_);
  const auto touch = clock_.reached(Stage::touch, finish);
  const int dry = up_to(std::max(finish, touch.value_or(air_.covers().end)));
  std::vector<Gate> gates;
  const auto fails = [&](Gate gate, bool is_so) {
    if (is_so) gates.push_back(gate);
  };
  fails(Gate::too_cold, ever(cold, start, finished));
  fails(Gate::too_warm, ever(warm, start, finished));
  fails(Gate::too_humid, ever(humid, start, finished));
  fails(Gate::dew, ever(near_dew, start, dry));
  fails(Gate::cold_before_dry, !touch || ever(under_hold, start, dry));
  if (limits_.hold_put_on_min) {
    const int held = up_to(finish + whole_minutes_up(limits_.hold_put_on_min->value));
    fails(Gate::cold_within_hold, ever(cold_air, finished + 1, held));
  }
  return gates;
}

}  // namespace tackfree
