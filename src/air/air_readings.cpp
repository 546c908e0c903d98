#include "tackfree/air/air_readings.hpp"

#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace tackfree {

namespace {

using Node = AirSeries::Node;

/// A difference over time: straight between its knots, nothing outside them.
template <class Difference>
class Fading {
 public:
  explicit Fading(const std::map<Instant, Difference>& differences) {
    const Instant* last = nullptr;
    for (const auto& [at, difference] : differences) {
      if (last == nullptr || at - *last >= 2 * reading_fades) {
        if (last != nullptr) knots_[*last + reading_fades] = {};
        knots_[at - reading_fades] = {};
      }
      knots_[at] = difference;
      last = &at;
    }
    if (last != nullptr) knots_[*last + reading_fades] = {};
  }

  const std::map<Instant, Difference>& knots() const { return knots_; }

  Difference at(Instant at) const {
    const auto after = knots_.upper_bound(at);
    if (after == knots_.begin() || after == knots_.end()) return {};
    const auto before = std::prev(after);
    const double share =
        to_duration(at - before->first) / to_duration(after->first - before->first);
    return before->second + (after->second - before->second) * share;
  }

 private:
  std::map<Instant, Difference> knots_;
};

bool node_before(Instant at, const Node& node) { return at < node.at; }

AirState account_at(const std::vector<Node>& nodes, Instant at) {
  const auto after = std::upper_bound(nodes.begin(), nodes.end(), at, node_before);
  if (after == nodes.end()) return nodes.back().state;
  return state_between(*std::prev(after), *after, at);
}

}  // namespace

std::vector<Node> with_readings(std::vector<Node> nodes, const std::vector<AirReading>& readings) {
  std::map<Instant, TemperatureDifference> warmer;
  std::map<Instant, Pressure> damper;
  for (const AirReading& reading : readings) {
    if (reading.at < nodes.front().at || reading.at > nodes.back().at) continue;
    const AirState account = account_at(nodes, reading.at);
    warmer[reading.at] = reading.temperature - account.temperature;
    damper.erase(reading.at);
    if (reading.humidity)
      damper[reading.at] = vapour_pressure(reading.temperature, *reading.humidity) - account.vapour;
  }
  if (warmer.empty()) return nodes;
  const Fading<TemperatureDifference> warmth(warmer);
  const Fading<Pressure> damp(damper);
  std::set<Instant> times;
  for (const Node& node : nodes) times.insert(node.at);
  for (const auto& [at, difference] : warmth.knots()) times.insert(at);
  for (const auto& [at, difference] : damp.knots()) times.insert(at);
  std::vector<Node> corrected;
  for (const Instant at : times) {
    if (at < nodes.front().at || at > nodes.back().at) continue;
    const AirState account = account_at(nodes, at);
    const Temperature temperature = account.temperature + warmth.at(at);
    const Pressure vapour =
        std::clamp(account.vapour + damp.at(at), Pressure(), saturation_pressure(temperature));
    corrected.push_back({at, {temperature, vapour}});
  }
  return corrected;
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
