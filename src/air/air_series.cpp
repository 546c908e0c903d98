#include "tackfree/air/air_series.hpp"

#include "tackfree/air/air_readings.hpp"
#include "tackfree/air/conditioned_air.hpp"

#include <algorithm>

namespace tackfree {

namespace {

bool earlier(Instant at, const AirNode& node) { return at < node.at; }

/// The first node after `at`; their number when there is none. Most series have a node every hour
/// or every few minutes, so it is looked for near where even steps would put it first.
std::size_t node_after(const std::vector<AirNode>& nodes, Instant at) {
  if (at < nodes.front().at) return 0;
  if (at >= nodes.back().at) return nodes.size();
  const auto steps = static_cast<std::ptrdiff_t>(nodes.size()) - 1;
  const auto even = static_cast<std::ptrdiff_t>((at - nodes.front().at) * steps /
                                                (nodes.back().at - nodes.front().at));
  auto from = nodes.begin() + std::max<std::ptrdiff_t>(0, even - 1);
  auto to = nodes.begin() + std::min(steps, even + 2);
  if (from->at > at) from = nodes.begin();
  if (to->at <= at) to = nodes.end();
  return static_cast<std::size_t>(std::upper_bound(from, to, at, earlier) - nodes.begin());
}

/// What lies in `span`, with a node at each of its ends, which `nodes` reach.
std::vector<AirNode> cut_to(const std::vector<AirNode>& nodes, Interval span) {
  const auto state_at = [&](Instant at) {
    const std::size_t after = node_after(nodes, at);
    if (nodes[after - 1].at == at) return nodes[after - 1].state;
    return state_between(nodes[after - 1], nodes[after], at);
  };
  std::vector<AirNode> inside{{span.begin, state_at(span.begin)}};
  for (const AirNode& node : nodes)
    if (node.at > span.begin && node.at < span.end) inside.push_back(node);
  inside.push_back({span.end, state_at(span.end)});
  return inside;
}

}  // namespace

AirMix as_mix(const AirRecord& record) {
  if (const auto* mix = std::get_if<AirMix>(&record)) return *mix;
  AirMix mix;
  if (const auto* constant = std::get_if<ConstantAir>(&record))
    mix.sources.push_back({"", *constant});
  else
    mix.sources.push_back({"", std::get<AirRows>(record)});
  return mix;
}

AirState AirSeries::at(Instant at) const {
  const std::size_t after = node_after(nodes_, at);
  if (after == 0) return nodes_.front().state;
  if (after == nodes_.size()) return nodes_.back().state;
  return state_between(nodes_[after - 1], nodes_[after], at);
}

Temperature AirSeries::surface_at(Instant at) const {
  if (boards_.empty()) return this->at(at).temperature;
  const std::size_t after = node_after(nodes_, at);
  if (after == 0) return boards_.front();
  if (after == nodes_.size()) return boards_.back();
  const double share = share_of_way({nodes_[after - 1].at, nodes_[after].at}, at);
  return boards_[after - 1] + (boards_[after] - boards_[after - 1]) * share;
}

Energy AirSeries::heat_until(Instant at) const {
  if (heat_.empty()) return {};
  const std::size_t after = node_after(nodes_, at);
  if (after == 0) return heat_.front();
  if (after == nodes_.size()) return heat_.back();
  const double share = share_of_way({nodes_[after - 1].at, nodes_[after].at}, at);
  return heat_[after - 1] + (heat_[after] - heat_[after - 1]) * share;
}

Interval AirSeries::covers() const { return {nodes_.front().at, nodes_.back().at}; }

void AirSeries::bring_indoors(const AirMix& mix, const std::vector<AirNode>& outdoors,
                              Interval span, const Read& read,
                              const std::vector<FasterLoss>& faster) {
  std::vector<AirNode> room = mix.boards && !mix.indoors ? every_five_minutes(outdoors) : outdoors;
  std::vector<IndoorNode> indoor;
  if (mix.indoors) {
    outdoors_ = outdoors;
    indoor = indoor_air(outdoors, *mix.indoors, faster);
    room.clear();
    for (const IndoorNode& node : indoor) room.push_back(node.node);
  }
  const std::vector<AirNode> better = conditioned_air(room, mix.conditioned);
  Interval with_read = span;
  for (const AirReading& reading : read.readings)
    with_read.begin = std::min(with_read.begin, std::max(reading.at, room.front().at));
  nodes_ = cut_to(with_readings(cut_to(better, with_read), read.readings, read.fading), span);
  if (mix.indoors && mix.indoors->heating) {
    const auto heat_at = [&](Instant at) {
      const std::size_t after = node_after(room, at);
      if (after == room.size()) return indoor.back().heat;
      const double share = share_of_way({room[after - 1].at, room[after].at}, at);
      return indoor[after - 1].heat + (indoor[after].heat - indoor[after - 1].heat) * share;
    };
    const Energy before = heat_at(span.begin);
    for (const AirNode& node : nodes_) heat_.push_back(heat_at(node.at) - before);
  }
  if (!mix.boards) return;
  const std::vector<AirNode> outside = cut_to(outdoors, span);
  const AirState& start = mix.boards->from_outdoors ? outside.front().state : nodes_.front().state;
  boards_ = board_temperatures(nodes_, start.temperature, mix.boards->thickness);
}

std::optional<AirSeries> AirSeries::over(const AirRecord& record, Interval span, Problems& problems,
                                         const std::vector<AirReading>& readings,
                                         const std::vector<FasterLoss>& faster) {
  const AirMix mix = as_mix(record);
  auto joined = joined_air(mix, span, problems);
  if (!joined) return std::nullopt;
  AirSeries series;
  series.bridged_ = std::move(joined->bridged);
  series.seams_ = std::move(joined->seams);
  series.held_months_ = std::move(joined->held_months);
  series.typical_from_ = joined->typical_from;
  series.mean_day_from_ = joined->mean_day_from;
  Read read{readings, fading_of(record)};
  if (const auto known = known_from(record))
    std::erase_if(read.readings, [&](const AirReading& reading) { return reading.at < *known; });
  series.bring_indoors(mix, joined->nodes, span, read, faster);
  return series;
}

}  // namespace tackfree
