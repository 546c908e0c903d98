#include "tackfree/fumes/room_air.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

/// (1 - e^-x) / x, 1 at 0.
double mean_of_decay(double x) { return x == 0 ? 1.0 : -std::expm1(-x) / x; }

/// (x - 1 + e^-x) / x^2, 1/2 at 0: cancels for small x, so there a series.
double ramp_of_decay(double x) {
  if (x < 0.05)
    return 1.0 / 2 - x * (1.0 / 6 - x * (1.0 / 24 - x * (1.0 / 120 - x * (1.0 / 720 - x / 5040))));
  return (x + std::expm1(-x)) / (x * x);
}

/// (1 - e^-x (1 + x)) / x^2, 1/2 at 0.
double ramp_of_both(double x) {
  if (x < 0.05)
    return 1.0 / 2 - x * (1.0 / 3 - x * (1.0 / 8 - x * (1.0 / 30 - x * (1.0 / 144 - x / 840))));
  return (-std::expm1(-x) - x * std::exp(-x)) / (x * x);
}

/// Integral of e^-Ns from 0 to h.
double decayed(double h, double n) { return h * mean_of_decay(n * h); }

/// (e^-kh - e^-Nh) / (N - k), written so that neither k = N nor huge exponents hurt.
double released_and_left(double h, double k, double n) {
  return std::exp(-std::min(k, n) * h) * decayed(h, std::abs(n - k));
}

/// Integral of the above from 0 to h, given the integral of e^-Ns. Where k and N nearly meet, the
/// limit at their mean is nearer than the difference quotient.
double released_and_left_hours(double h, double k, double n, double decayed_by_n) {
  constexpr double nearly_equal = 1e-5;
  if (std::abs(n - k) * h < nearly_equal) return h * h * ramp_of_both((k + n) / 2 * h);
  return (decayed(h, k) - decayed_by_n) / (n - k);
}

}  // namespace

RoomAir::RoomAir(Volume room, const std::vector<VapourSource>& sources,
                 const std::vector<AirStretch>& stretches, Duration end)
    : room_(room) {
  set_breaks(sources, stretches, end.in(hours));
  for (const VapourSource& source : sources) release_.push_back(source.release.in(per_hour));
  feeds_.resize(sources.size() * breaks_.size());
  states_.resize(feeds_.size());
  vented_.resize(feeds_.size());
  for (std::size_t source = 0; source < sources.size(); ++source) run(source, sources[source]);
}

void RoomAir::set_breaks(const std::vector<VapourSource>& sources,
                         const std::vector<AirStretch>& stretches, double end) {
  breaks_ = {0.0, end};
  for (const VapourSource& source : sources)
    for (const Application& application : source.applications)
      for (const Duration time : {application.begin, application.end})
        if (time.in(hours) < end) breaks_.push_back(time.in(hours));
  for (const AirStretch& stretch : stretches)
    if (stretch.from > Duration{} && stretch.from.in(hours) < end)
      breaks_.push_back(stretch.from.in(hours));
  std::ranges::sort(breaks_);
  breaks_.erase(std::unique(breaks_.begin(), breaks_.end()), breaks_.end());
  std::size_t next = 0;
  double changes = 0;
  for (const double hour : breaks_) {
    for (; next < stretches.size() && stretches[next].from.in(hours) <= hour; ++next)
      changes = stretches[next].changes.in(per_hour);
    changes_.push_back(changes);
  }
}

void RoomAir::run(std::size_t source, const VapourSource& from) {
  std::vector<double> wet_jump(breaks_.size()), air_jump(breaks_.size());
  for (const Application& application : from.applications) {
    if (application.begin.in(hours) >= breaks_.back()) continue;
    const std::size_t first = segment_at(application.begin.in(hours));
    const double grams_on = application.solvent.in(grams);
    const double flashed = grams_on * application.flashed_off.in(fraction);
    const double length = (application.end - application.begin).in(hours);
    if (length <= 0) {
      wet_jump[first] += grams_on - flashed;
      air_jump[first] += flashed;
      continue;
    }
    const std::size_t last = segment_at(std::min(application.end.in(hours), breaks_.back()));
    for (std::size_t segment = first; segment < last; ++segment) {
      Feed& feed = feeds_[at(source, segment)];
      feed.on_work += (grams_on - flashed) / length;
      feed.into_air += flashed / length;
    }
  }
  State state{.in_air = from.in_air.in(grams)};
  double vented = 0;
  for (std::size_t segment = 0; segment < breaks_.size(); ++segment) {
    state.wet += wet_jump[segment];
    state.in_air += air_jump[segment];
    states_[at(source, segment)] = state;
    vented_[at(source, segment)] = vented;
    if (segment + 1 == breaks_.size()) break;
    const State next = advanced(source, segment, breaks_[segment + 1] - breaks_[segment]);
    vented += changes_[segment] * (next.in_air_hours - state.in_air_hours);
    state = next;
  }
}

std::size_t RoomAir::segment_at(double hour) const {
  const auto after = std::ranges::upper_bound(breaks_, hour);
  return after == breaks_.begin() ? 0 : static_cast<std::size_t>(after - breaks_.begin()) - 1;
}

double RoomAir::in_air_after(std::size_t source, std::size_t segment, double h) const {
  const State& before = states_[at(source, segment)];
  const Feed& feed = feeds_[at(source, segment)];
  const double k = release_[source], n = changes_[segment];
  return before.in_air * std::exp(-n * h) + (feed.on_work + feed.into_air) * decayed(h, n) +
         (k * before.wet - feed.on_work) * released_and_left(h, k, n);
}

double RoomAir::in_air_hours_after(std::size_t source, std::size_t segment, double h) const {
  const State& before = states_[at(source, segment)];
  const Feed& feed = feeds_[at(source, segment)];
  const double k = release_[source], n = changes_[segment];
  const double decayed_by_n = decayed(h, n);
  const double fed = feed.on_work + feed.into_air;
  return before.in_air_hours + before.in_air * decayed_by_n +
         (fed > 0 ? fed * h * h * ramp_of_decay(n * h) : 0) +
         (k * before.wet - feed.on_work) * released_and_left_hours(h, k, n, decayed_by_n);
}

RoomAir::State RoomAir::advanced(std::size_t source, std::size_t segment, double h) const {
  const State& before = states_[at(source, segment)];
  const double k = release_[source];
  const double wet =
      feeds_[at(source, segment)].on_work * decayed(h, k) + before.wet * std::exp(-k * h);
  return {wet, in_air_after(source, segment, h), in_air_hours_after(source, segment, h)};
}

RoomAir::State RoomAir::state(std::size_t source, Duration at) const {
  const auto [segment, h] = place(at.in(hours));
  return advanced(source, segment, h);
}

RoomAir::Place RoomAir::place(double hour) const {
  const double within = std::clamp(hour, 0.0, breaks_.back());
  const std::size_t segment = segment_at(within);
  return {segment, within - breaks_[segment]};
}

double RoomAir::sum_in_air(const std::vector<double>& weights, double hour) const {
  const auto [segment, h] = place(hour);
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) sum += weights[i] * in_air_after(i, segment, h);
  return sum;
}

double RoomAir::sum_in_air_hours(const std::vector<double>& weights, double hour) const {
  const auto [segment, h] = place(hour);
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i)
    sum += weights[i] * in_air_hours_after(i, segment, h);
  return sum;
}

MassPerVolume RoomAir::concentration(std::size_t source, Duration at) const {
  return grams(state(source, at).in_air) / room_;
}

MassPerVolume RoomAir::mean(std::size_t source, Duration from, Duration to) const {
  const double sum =
      state(source, to).in_air_hours - (from > Duration{} ? state(source, from).in_air_hours : 0.0);
  return grams(sum / (to - from).in(hours)) / room_;
}

Mass RoomAir::vented(std::size_t source, Duration at) const {
  const double hour = std::clamp(at.in(hours), 0.0, breaks_.back());
  const std::size_t segment = segment_at(hour);
  const double since =
      state(source, at).in_air_hours - states_[this->at(source, segment)].in_air_hours;
  return grams(vented_[this->at(source, segment)] + changes_[segment] * since);
}

double RoomAir::most_in_air(const std::vector<double>& weights, std::size_t segment) const {
  if (segment + 1 >= breaks_.size()) return sum_in_air(weights, breaks_.back());
  const double length = breaks_[segment + 1] - breaks_[segment], n = changes_[segment];
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const State& state = states_[at(i, segment)];
    const Feed& feed = feeds_[at(i, segment)];
    const double all = state.wet + state.in_air + (feed.on_work + feed.into_air) * length;
    const double wettest = std::max(
        state.wet, feed.on_work > 0 ? std::min(state.wet + feed.on_work * length,
                                               std::max(state.wet, feed.on_work / release_[i]))
                                    : 0.0);
    const double most_fed = feed.into_air + release_[i] * wettest;
    const double settled = n > 0 ? std::max(state.in_air, most_fed / n) : all;
    sum += weights[i] * std::min(all, settled);
  }
  return sum;
}

}  // namespace tackfree
