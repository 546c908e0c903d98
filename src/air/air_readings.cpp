#include "tackfree/air/air_readings.hpp"

#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/base/elementary.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace tackfree {

namespace {

/// So close that what fades can be drawn straight between them: within 0.1 % of it in six hours.
constexpr Minutes fading_step{15};
/// After so many time constants nothing is left that anybody could read off.
constexpr double forgotten_after = 10;

/// A difference over time: its readings, forgotten with a time constant on either side of each.
template <class Difference>
class Fading {
 public:
  Fading(const std::map<Instant, Difference>& read, Duration time_constant)
      : read_(read), time_constant_(time_constant) {}

  Difference at(Instant at) const {
    const auto after = read_.lower_bound(at);
    if (read_.empty()) return {};
    if (after == read_.begin()) return after->second * left(after->first - at);
    const auto before = std::prev(after);
    if (after == read_.end()) return before->second * left(at - before->first);
    const Minutes gap = after->first - before->first;
    return before->second * share(at - before->first, gap) +
           after->second * share(after->first - at, gap);
  }

 private:
  double left(Minutes since) const { return exponential(-(to_duration(since) / time_constant_)); }

  /// What counts of a reading so far away, towards another one at the end of `gap`:
  /// sinh((gap - away) / tau) / sinh(gap / tau), without its overflow.
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the part and the whole of one stretch
  double share(Minutes away, Minutes gap) const {
    return (left(away) - left(2 * gap - away)) / (1 - left(2 * gap));
  }

  const std::map<Instant, Difference>& read_;
  Duration time_constant_;
};

bool node_before(Instant at, const AirNode& node) { return at < node.at; }

AirState account_at(const std::vector<AirNode>& nodes, Instant at) {
  const auto after = std::upper_bound(nodes.begin(), nodes.end(), at, node_before);
  if (after == nodes.begin()) return nodes.front().state;
  if (after == nodes.end()) return nodes.back().state;
  return state_between(*std::prev(after), *after, at);
}

/// The nodes' own times, those of the readings, and steps between while a reading is remembered.
std::set<Instant> times_of(const std::vector<AirNode>& nodes,
                           const std::map<Instant, TemperatureDifference>& read,
                           Duration time_constant) {
  std::set<Instant> times;
  for (const AirNode& node : nodes) times.insert(node.at);
  const Minutes reach = whole_minutes_up(time_constant * forgotten_after);
  Instant done = nodes.front().at;
  for (const auto& [at, difference] : read) {
    if (at >= nodes.front().at) times.insert(at);
    Instant step = std::max(done, at - reach);
    step += (fading_step - step.time_since_epoch() % fading_step) % fading_step;
    for (; step <= std::min(at + reach, nodes.back().at); step += fading_step) times.insert(step);
    done = std::max(done, step);
  }
  return times;
}

}  // namespace

std::vector<AirNode> with_readings(std::vector<AirNode> nodes,
                                   const std::vector<AirReading>& readings,
                                   Duration time_constant) {
  std::map<Instant, TemperatureDifference> warmer;
  std::map<Instant, Pressure> damper;
  for (const AirReading& reading : readings) {
    if (reading.at > nodes.back().at) continue;
    const AirState account = account_at(nodes, reading.at);
    warmer[reading.at] = reading.temperature - account.temperature;
    damper.erase(reading.at);
    if (reading.humidity)
      damper[reading.at] = vapour_pressure(reading.temperature, *reading.humidity) - account.vapour;
  }
  if (warmer.empty()) return nodes;
  const Fading<TemperatureDifference> warmth(warmer, time_constant);
  const Fading<Pressure> damp(damper, time_constant);
  std::vector<AirNode> corrected;
  for (const Instant at : times_of(nodes, warmer, time_constant)) {
    const AirState account = account_at(nodes, at);
    const Temperature temperature = account.temperature + warmth.at(at);
    const Pressure vapour =
        std::clamp(account.vapour + damp.at(at), Pressure(), saturation_pressure(temperature));
    corrected.push_back({at, {temperature, vapour}});
  }
  return corrected;
}

Duration fading_of(const AirRecord& record) {
  const auto* mix = std::get_if<AirMix>(&record);
  return mix != nullptr && mix->indoors ? mix->indoors->time_constant.value : usual_time_constant;
}

std::optional<Instant> known_from(const AirRecord& record) {
  const auto first_of = [](const auto& what) -> std::optional<Instant> {
    using What = std::decay_t<decltype(what)>;
    if constexpr (std::is_same_v<What, AirRows>) {
      if (!what.rows.empty()) return what.rows.front().at;
    } else if constexpr (std::is_same_v<What, AirDays>) {
      if (!what.days.empty()) return what.days.front().begins;
    }
    return std::nullopt;
  };
  if (const auto* rows = std::get_if<AirRows>(&record)) return first_of(*rows);
  const auto* mix = std::get_if<AirMix>(&record);
  if (mix == nullptr || mix->sources.empty()) return std::nullopt;
  return std::visit(first_of, mix->sources.front().what);
}

}  // namespace tackfree
