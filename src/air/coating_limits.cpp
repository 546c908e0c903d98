#include "tackfree/air/coating_limits.hpp"

#include "tackfree/air/kept_limits.hpp"
#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>

namespace tackfree {

namespace {

/// For each instant, the first at or after it that is marked; one past the end when there is none.
std::vector<int> next_marked(const std::vector<bool>& marked) {
  std::vector<int> next(marked.size());
  auto first = static_cast<int>(marked.size());
  for (std::size_t i = marked.size(); i-- > 0;) {
    if (marked[i]) first = static_cast<int>(i);
    next[i] = first;
  }
  return next;
}

int slots_up(Minutes wait, Minutes grid) {
  return static_cast<int>((wait + grid - Minutes(1)) / grid);
}

}  // namespace

std::string_view word_for(Gate gate) {
  switch (gate) {
    case Gate::too_cold:
      return "too cold to coat";
    case Gate::too_warm:
      return "too warm to coat";
    case Gate::too_humid:
      return "too humid to coat";
    case Gate::dew:
      return "too near the dew point until touch-dry";
    case Gate::cold_before_dry:
      return "too cold before it is touch-dry";
    case Gate::cold_within_hold:
      return "too cold in the hours after coating";
  }
  return "unfit air";
}

GateOrigin origin_of(const CoatingLimits& limits, Gate gate) {
  const auto of = [](const auto& figure) { return GateOrigin{figure.origin, figure.source}; };
  switch (gate) {
    case Gate::too_cold:
      return of(limits.put_on_min);
    case Gate::too_warm:
      return of(limits.put_on_max);
    case Gate::too_humid:
      return of(limits.humidity_max);
    case Gate::dew:
      return of(limits.dew_point_margin);
    case Gate::cold_before_dry:
      return of(limits.hold_min);
    case Gate::cold_within_hold:
      if (limits.hold_put_on_min) return of(*limits.hold_put_on_min);
      break;
  }
  return {};
}

bool near_dew_point(const CoatingLimits& limits, const AirState& air, Temperature surface) {
  return !is_clear_of_dew(air, surface, limits.dew_point_margin.value);
}

std::optional<Gate> put_on_gate(const CoatingLimits& limits, const AirState& air,
                                Temperature surface) {
  if (!is_warm_enough(std::min(air.temperature, surface), limits.put_on_min.value))
    return Gate::too_cold;
  if (!is_cool_enough(std::max(air.temperature, surface), limits.put_on_max.value))
    return Gate::too_warm;
  if (!is_dry_enough(air, limits.humidity_max.value)) return Gate::too_humid;
  if (near_dew_point(limits, air, surface)) return Gate::dew;
  return std::nullopt;
}

std::optional<Gate> put_on_gate(const CoatingLimits& limits, const AirState& air) {
  return put_on_gate(limits, air, air.temperature);
}

BlushRisk blush_risk(const AirState& air) {
  constexpr TemperatureDifference enough = fahrenheit_degrees(20);
  constexpr Humidity much = humidity_percent(65);
  if (air.temperature - dew_point(air.vapour) >= enough) return BlushRisk::none;
  return relative_humidity(air.temperature, air.vapour) > much ? BlushRisk::high : BlushRisk::some;
}

GateTable::GateTable(const CoatingLimits& limits, const AirSeries& air, const DryingClock& clock,
                     Interval span, Minutes grid)
    : slots_(static_cast<int>(span.length() / grid)) {
  const auto instants = static_cast<std::size_t>(slots_) + 1;
  std::vector<bool> unfit(instants);
  std::vector<bool> dew(instants);
  std::vector<bool> under_hold(instants);
  std::vector<bool> under_put_on(instants);
  put_on_.resize(instants);
  touch_.resize(instants);
  for (std::size_t i = 0; i < instants; ++i) {
    const Instant at = span.begin + static_cast<int>(i) * grid;
    const AirState state = air.at(at);
    const Temperature surface = air.surface_at(at);
    put_on_[i] = put_on_gate(limits, state, surface);
    unfit[i] = put_on_[i].has_value();
    // The dew point is looked at last: air that is fit is far enough from it.
    dew[i] = put_on_[i] == Gate::dew || (unfit[i] && near_dew_point(limits, state, surface));
    under_hold[i] = !is_warm_enough(state.temperature, limits.hold_min.value);
    under_put_on[i] = !is_warm_enough(state.temperature, limits.put_on_min.value);
    const auto dry_at = clock.reached(Stage::touch, at);
    touch_[i] = dry_at ? slots_up(*dry_at - span.begin, grid) : slots_ + 1;
  }
  next_unfit_ = next_marked(unfit);
  next_dew_ = next_marked(dew);
  next_hold_ = next_marked(under_hold);
  if (limits.hold_put_on_min) {
    next_put_on_cold_ = next_marked(under_put_on);
    hold_slots_ = slots_up(whole_minutes_up(limits.hold_put_on_min->value), grid);
  }
}

std::optional<Gate> GateTable::forbids(int start, int slots) const {
  const int finish = start + slots;
  if (start < 0 || finish > slots_) return Gate::cold_before_dry;
  const auto begin = static_cast<std::size_t>(start);
  if (next_unfit_[begin] <= finish) return put_on_[static_cast<std::size_t>(next_unfit_[begin])];
  const int touch = touch_[static_cast<std::size_t>(finish)];
  const int last_known = std::min(touch, slots_);
  if (next_dew_[begin] <= last_known) return Gate::dew;
  if (next_hold_[begin] <= last_known || touch > slots_) return Gate::cold_before_dry;
  if (hold_slots_ > 0 && next_put_on_cold_[begin] <= std::min(finish + hold_slots_, slots_))
    return Gate::cold_within_hold;
  return std::nullopt;
}

}  // namespace tackfree
