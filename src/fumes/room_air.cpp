#include "tackfree/fumes/room_air.hpp"

#include "tackfree/base/elementary.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

/// Below this the closed forms cancel, and a series takes their place.
constexpr double small = 0.05;

/// (1 - e^-x) / x for small x, 1 at 0.
double mean_of_short_decay(double x) {
  return 1 - x * (1.0 / 2 -
                  x * (1.0 / 6 - x * (1.0 / 24 - x * (1.0 / 120 - x * (1.0 / 720 - x / 5040)))));
}

/// (x - 1 + e^-x) / x^2, 1/2 at 0.
double ramp_of(const Decay& decay) {
  const double x = decay.rate * decay.hours;
  if (x < small)
    return 1.0 / 2 - x * (1.0 / 6 - x * (1.0 / 24 - x * (1.0 / 120 - x * (1.0 / 720 - x / 5040))));
  return (1 - decay.mean) / x;
}

/// (1 - e^-x (1 + x)) / x^2, 1/2 at 0.
double ramp_of_both(double x) {
  if (x < small)
    return 1.0 / 2 - x * (1.0 / 3 - x * (1.0 / 8 - x * (1.0 / 30 - x * (1.0 / 144 - x / 840))));
  return (-exponential_less_one(-x) - x * exponential(-x)) / (x * x);
}

/// (e^-kh - e^-Nh) / (N - k), written so that neither k = N nor huge exponents hurt.
double released_and_left(const Decay& released, const Decay& aired) {
  const double apart = std::abs(aired.rate - released.rate) * aired.hours;
  if (apart < small)
    return std::max(released.left, aired.left) * aired.hours * mean_of_short_decay(apart);
  return (released.left - aired.left) / (aired.rate - released.rate);
}

/// Integral of the above. Where k and N nearly meet, the limit at their mean is nearer than the
/// difference quotient.
double released_and_left_hours(const Decay& released, const Decay& aired) {
  constexpr double nearly_equal = 1e-5;
  const double h = aired.hours;
  if (std::abs(aired.rate - released.rate) * h < nearly_equal)
    return h * h * ramp_of_both((released.rate + aired.rate) / 2 * h);
  return (released.hours_of_it() - aired.hours_of_it()) / (aired.rate - released.rate);
}

}  // namespace

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): two bare numbers by their nature
Decay::Decay(double falls_by, double after)
    : rate(falls_by),
      hours(after),
      left(exponential(-rate * hours)),
      mean(rate * hours < small ? mean_of_short_decay(rate * hours) : (1 - left) / (rate * hours)) {
}

RoomAir::RoomAir(Volume room, const std::vector<VapourSource>& sources,
                 const std::vector<AirStretch>& stretches, Duration end)
    : room_(room) {
  set_breaks(sources, stretches, end.in(hours));
  for (const VapourSource& source : sources) release_.push_back(source.release.in(per_hour));
  feeds_.resize(sources.size() * breaks_.size());
  states_.resize(feeds_.size());
  const std::vector<Moment> ends = segment_ends();
  for (std::size_t source = 0; source < sources.size(); ++source)
    run(source, sources[source], ends);
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

std::vector<RoomAir::Moment> RoomAir::segment_ends() const {
  std::vector<Moment> ends;
  ends.reserve(breaks_.size());
  for (std::size_t segment = 0; segment + 1 < breaks_.size(); ++segment)
    ends.push_back(moment({segment, breaks_[segment + 1] - breaks_[segment]}));
  return ends;
}

void RoomAir::run(std::size_t source, const VapourSource& from, const std::vector<Moment>& ends) {
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
  for (std::size_t segment = 0; segment < breaks_.size(); ++segment) {
    state.wet += wet_jump[segment];
    state.in_air += air_jump[segment];
    states_[at(source, segment)] = state;
    if (segment + 1 == breaks_.size()) break;
    state = advanced(source, ends[segment]);
  }
}

std::size_t RoomAir::segment_at(double hour) const {
  const auto after = std::ranges::upper_bound(breaks_, hour);
  return after == breaks_.begin() ? 0 : static_cast<std::size_t>(after - breaks_.begin()) - 1;
}

RoomAir::Moment RoomAir::moment(const Place& place) const {
  return {place.segment, Decay(changes_[place.segment], place.hours_on)};
}

double RoomAir::in_air_after(std::size_t source, const Moment& moment,
                             const Decay& released) const {
  const State& before = states_[at(source, moment.segment)];
  const Feed& feed = feeds_[at(source, moment.segment)];
  return before.in_air * moment.aired.left +
         (feed.on_work + feed.into_air) * moment.aired.hours_of_it() +
         (released.rate * before.wet - feed.on_work) * released_and_left(released, moment.aired);
}

double RoomAir::in_air_hours_after(std::size_t source, const Moment& moment,
                                   const Decay& released) const {
  const State& before = states_[at(source, moment.segment)];
  const Feed& feed = feeds_[at(source, moment.segment)];
  const Decay& aired = moment.aired;
  const double fed = feed.on_work + feed.into_air;
  return before.in_air_hours + before.in_air * aired.hours_of_it() +
         (fed > 0 ? fed * aired.hours * aired.hours * ramp_of(aired) : 0) +
         (released.rate * before.wet - feed.on_work) * released_and_left_hours(released, aired);
}

RoomAir::State RoomAir::advanced(std::size_t source, const Moment& moment) const {
  const std::size_t here = at(source, moment.segment);
  const Decay released(release_[source], moment.aired.hours);
  return {feeds_[here].on_work * released.hours_of_it() + states_[here].wet * released.left,
          in_air_after(source, moment, released), in_air_hours_after(source, moment, released)};
}

RoomAir::Place RoomAir::place(double hour) const {
  const double within = std::clamp(hour, 0.0, breaks_.back());
  const std::size_t segment = segment_at(within);
  return {segment, within - breaks_[segment]};
}

double RoomAir::sum_in_air(const std::vector<double>& weights, double hour) const {
  const Moment then = moment(place(hour));
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i)
    sum += weights[i] * in_air_after(i, then, Decay(release_[i], then.aired.hours));
  return sum;
}

double RoomAir::sum_in_air_hours(const std::vector<double>& weights, double hour) const {
  const Place where = place(hour);
  double sum = 0;
  if (where.hours_on == 0) {
    for (std::size_t i = 0; i < weights.size(); ++i)
      sum += weights[i] * states_[at(i, where.segment)].in_air_hours;
    return sum;
  }
  const Moment then = moment(where);
  for (std::size_t i = 0; i < weights.size(); ++i)
    sum += weights[i] * in_air_hours_after(i, then, Decay(release_[i], then.aired.hours));
  return sum;
}

/// In a segment m = a + b e^-kh + c e^-Nh, which is highest at one of its ends or where m' = 0.
/// Where k and N nearly meet, b and c do not stand apart, and there is a plain bound: all there is,
/// or what the wettest moment feeds against the air changes.
double RoomAir::most_of(std::size_t source, std::size_t segment) const {
  const State& state = states_[at(source, segment)];
  const Feed& feed = feeds_[at(source, segment)];
  const double length = breaks_[segment + 1] - breaks_[segment];
  const double n = changes_[segment], k = release_[source];
  const double fed = feed.on_work + feed.into_air;
  const double at_ends = std::max(state.in_air, states_[at(source, segment + 1)].in_air);
  if (n == 0) return at_ends;
  if (std::abs(n - k) < 1e-3 * std::max(n, k)) {
    const double wettest =
        std::max(state.wet, std::min(state.wet + feed.on_work * length, feed.on_work / k));
    return std::min(state.wet + state.in_air + fed * length,
                    std::max(state.in_air, (feed.into_air + k * wettest) / n));
  }
  const double b = (k * state.wet - feed.on_work) / (n - k);
  const double c = state.in_air - fed / n - b;
  const double turns = logarithm(-n * c / (k * b)) / (n - k);
  if (!(turns > 0 && turns < length)) return at_ends;
  return std::max(at_ends, in_air_after(source, moment({segment, turns}), Decay(k, turns)));
}

double RoomAir::most_in_air(const std::vector<double>& weights, std::size_t segment) const {
  if (segment + 1 >= breaks_.size()) return sum_in_air(weights, breaks_.back());
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) sum += weights[i] * most_of(i, segment);
  return sum;
}

}  // namespace tackfree
