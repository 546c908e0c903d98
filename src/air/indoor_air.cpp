#include "tackfree/air/indoor_air.hpp"

#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/base/elementary.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

/// As the clock's: nodes then fall on the minutes at which it computes rates.
constexpr Minutes step_length{5};

/// The mean temperature of the first day of `nodes`, or of all where there is less.
Temperature first_day_mean(const std::vector<AirNode>& nodes) {
  TemperatureDifference sum;
  Duration length;
  for (std::size_t i = 1; i < nodes.size() && nodes[i].at <= nodes.front().at + one_day; ++i) {
    const Duration step = to_duration(nodes[i].at - nodes[i - 1].at);
    const Temperature a = nodes[i - 1].state.temperature;
    sum += ((a - celsius(0)) + (nodes[i].state.temperature - a) / 2) * step.in(hours);
    length += step;
  }
  if (length <= hours(0)) return nodes.front().state.temperature;
  return celsius(0) + sum / length.in(hours);
}

bool heated_at(const Heating& heating, Instant at) {
  const int minute = heating.zone.local(at).minute_of_day;
  return std::any_of(heating.hours.begin(), heating.hours.end(),
                     [&](const DayWindow& h) { return minute >= h.begin && minute < h.end; });
}

/// What the thermostat makes of one step that would end at `unheated`.
struct HeatedStep {
  Temperature end;
  Energy heat;
};

/// Full power until the set point, then just enough to stay there; the heat by balance, from the
/// mean temperatures of the step: what left the room, and what warmed it.
// NOLINTBEGIN(bugprone-easily-swappable-parameters): in order of time
HeatedStep heated_step(const Heating& heating, double times, Duration time_constant,
                       Temperature start, Temperature from, Temperature to, Temperature unheated,
                       Duration step) {
  // NOLINTEND(bugprone-easily-swappable-parameters)
  if (unheated >= heating.set_point) return {unheated, {}};
  const HeatLoss loss = heating.loss.value * times;
  const TemperatureDifference lift = heating.heater.value / loss;
  const Temperature at_full = lagged(start, from + lift, to + lift, step, time_constant);
  if (at_full <= heating.set_point) return {at_full, heating.heater.value * step};
  const Temperature end = std::max(unheated, heating.set_point);
  const TemperatureDifference warmer = end - start;
  const TemperatureDifference over_outdoors =
      ((start - from) + (end - to)) / 2 + warmer * (time_constant / step);
  const Power needed = std::clamp(loss * over_outdoors, kilowatts(0), heating.heater.value);
  return {end, needed * step};
}

double times_faster(const std::vector<FasterLoss>& faster, Instant at) {
  const auto after = std::ranges::upper_bound(
      faster, at, {}, [](const FasterLoss& each) { return each.time.begin; });
  if (after == faster.begin() || at >= std::prev(after)->time.end) return 1;
  return std::prev(after)->times;
}

/// Every five minutes, counted from 1970, and the ends.
std::vector<Instant> steps_of(Interval span) {
  std::vector<Instant> steps{span.begin};
  const auto past = span.begin.time_since_epoch() % step_length;
  for (Instant at = span.begin - past + step_length; at < span.end; at += step_length)
    steps.push_back(at);
  steps.push_back(span.end);
  return steps;
}

Pressure indoor_vapour(const Indoors& indoors, bool aired, Temperature t, Pressure outdoors) {
  const Pressure most = saturation_pressure(t);
  if (!indoors.humidity_ceiling || aired) return std::min(outdoors, most);
  return std::min(outdoors, vapour_pressure(t, *indoors.humidity_ceiling));
}

/// Goes through nodes in order of time.
class Walk {
 public:
  explicit Walk(const std::vector<AirNode>& nodes) : nodes_(nodes) {}
  AirState at(Instant at) {
    while (next_ + 1 < nodes_.size() && nodes_[next_].at < at) ++next_;
    return state_between(nodes_[next_ - 1], nodes_[next_], at);
  }

 private:
  const std::vector<AirNode>& nodes_;
  std::size_t next_ = 1;
};

}  // namespace

Temperature lagged(Temperature start, Temperature from, Temperature to, Duration step,
                   Duration time_constant) {
  const double steps = step / time_constant;
  // What a straight line leaves between itself and its follower once that has settled.
  const TemperatureDifference behind = (to - from) / steps;
  return to - behind + (start - from + behind) * exponential(-steps);
}

std::vector<IndoorNode> indoor_air(const std::vector<AirNode>& outdoors, const Indoors& indoors,
                                   const std::vector<FasterLoss>& faster) {
  Walk walk(outdoors);
  Temperature t = first_day_mean(outdoors);
  Energy heat;
  std::vector<IndoorNode> nodes;
  Instant before = outdoors.front().at;
  AirState out = outdoors.front().state;
  for (const Instant at : steps_of({outdoors.front().at, outdoors.back().at})) {
    if (at > before) {
      const AirState next = walk.at(at);
      const Duration step = to_duration(at - before);
      const double times = times_faster(faster, before);
      const Duration tau = indoors.time_constant.value / times;
      const Temperature free = lagged(t, out.temperature, next.temperature, step, tau);
      HeatedStep end{free, {}};
      if (indoors.heating && heated_at(*indoors.heating, before))
        end = heated_step(*indoors.heating, times, tau, t, out.temperature, next.temperature, free,
                          step);
      t = end.end;
      heat += end.heat;
      out = next;
      before = at;
    }
    nodes.push_back(
        {{at, {t, indoor_vapour(indoors, times_faster(faster, at) > 1, t, out.vapour)}}, heat});
  }
  return nodes;
}

std::vector<AirNode> every_five_minutes(const std::vector<AirNode>& nodes) {
  Walk walk(nodes);
  std::vector<AirNode> fine;
  for (const Instant at : steps_of({nodes.front().at, nodes.back().at}))
    fine.push_back({at, walk.at(at)});
  return fine;
}

Duration board_time_constant(Length thickness) {
  constexpr double density = 500, heat_capacity = 1600, surface_film = 8;
  return minutes(density * heat_capacity * thickness.in(metres) / (2 * surface_film) / 60);
}

std::vector<Temperature> board_temperatures(const std::vector<AirNode>& room, Temperature start,
                                            Length thickness) {
  const Duration tau = board_time_constant(thickness);
  std::vector<Temperature> boards{start};
  for (std::size_t i = 1; i < room.size(); ++i) {
    const Duration step = to_duration(room[i].at - room[i - 1].at);
    boards.push_back(
        lagged(boards.back(), room[i - 1].state.temperature, room[i].state.temperature, step, tau));
  }
  return boards;
}

}  // namespace tackfree
