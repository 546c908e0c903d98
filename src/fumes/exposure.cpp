#include "tackfree/fumes/exposure.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace tackfree {

namespace {

constexpr double rounding = 1e-12;

/// A stretch in which the value is smooth, and what it cannot pass there.
struct Piece {
  double begin, end, bound;
};

/// The sum over limits of one room, in hours.
class Value {
 public:
  Value(const RoomAir& air, const Measure& measure) : air_(air), window_(measure.window.in(hours)) {
    for (const MassPerVolume limit : measure.limits)
      weights_.push_back(1.0 / (limit.in(grams_per_cubic_metre)*air.room().in(cubic_metres)));
  }

  double operator()(double hour) const {
    if (window_ > 0) return (dose(hour) - dose(hour - window_)) / window_;
    return air_.sum_in_air(weights_, hour);
  }

  /// The smooth stretches from `from` to `to` where the value may pass `over`, those of the highest
  /// bound first.
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): two hours and a value
  std::vector<Piece> pieces(double from, double to, double over) const {
    const std::vector<double>& breaks = air_.break_hours();
    const std::vector<double> marks = marks_between(from, to);
    const std::size_t first = segment_at(from - window_);
    std::vector<double> most;  // by segment, from the first on
    for (std::size_t i = first; i < breaks.size() && (i == first || breaks[i] < to); ++i)
      most.push_back(air_.most_in_air(weights_, i));
    std::vector<Piece> result;
    std::size_t oldest = first, newest = segment_at(from);
    for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
      const double begin = marks[i], end = marks[i + 1];
      while (newest + 1 < breaks.size() && breaks[newest + 1] <= begin) ++newest;
      while (oldest < newest && breaks[oldest + 1] <= begin - window_) ++oldest;
      double bound = *std::max_element(&most[oldest - first], &most[newest - first] + 1);
      if (bound <= over) continue;
      if (window_ > 0) bound = std::min(bound, (dose(end) - dose(begin - window_)) / window_);
      if (bound > over) result.push_back({begin, end, bound});
    }
    std::ranges::stable_sort(result, std::ranges::greater{}, &Piece::bound);
    return result;
  }

 private:
  double dose(double hour) const { return hour <= 0 ? 0.0 : air_.sum_in_air_hours(weights_, hour); }

  std::size_t segment_at(double hour) const {
    const std::vector<double>& breaks = air_.break_hours();
    const auto after = std::ranges::upper_bound(breaks, hour);
    return after == breaks.begin() ? 0 : static_cast<std::size_t>(after - breaks.begin()) - 1;
  }

  /// Where the value may bend: at every break, and where one leaves the window.
  std::vector<double> marks_between(double from, double to) const {
    const std::vector<double>& breaks = air_.break_hours();
    std::vector<double> marks{from, to};
    for (auto hour = std::ranges::lower_bound(breaks, from - window_);
         hour != breaks.end() && *hour < to; ++hour)
      for (const double mark : {*hour, *hour + window_})
        if (mark > from && mark < to) marks.push_back(mark);
    std::ranges::sort(marks);
    marks.erase(std::unique(marks.begin(), marks.end()), marks.end());
    return marks;
  }

  const RoomAir& air_;
  double window_;
  std::vector<double> weights_;
};

/// Moments of a piece to look at: close together at its start, where a fast source or a fan acts.
constexpr double closest = 4e-3;  // hours
constexpr int even_parts = 8;

std::vector<double> samples(const Piece& piece) {
  const double length = piece.end - piece.begin;
  std::vector<double> at{piece.begin};
  double part = length / 2;
  while (part > closest) {
    at.push_back(piece.begin + part);
    part /= 2;
  }
  for (int i = 1; i <= even_parts; ++i) at.push_back(piece.begin + length * i / even_parts);
  std::ranges::sort(at);
  at.erase(std::unique(at.begin(), at.end()), at.end());  // refining needs both true neighbours
  return at;
}

/// Hours. Near its top a value is flat, so that it is right to about the square of this.
constexpr double shortest_told = 2e-4;

struct Spot {
  double at, value;
};

/// Where the parabola through three spots turns; not a number where they do not make one.
double vertex(const Spot& a, const Spot& b, const Spot& c) {
  const double left = (b.at - a.at) * (b.value - c.value);
  const double right = (b.at - c.at) * (b.value - a.value);
  return b.at - ((b.at - a.at) * left - (b.at - c.at) * right) / (2 * (left - right));
}

/// The highest value between two spots, from the highest one known: by parabolas, and now and then
/// by the golden section, which parabolas that creep up from one side need. Near the top, and at an
/// end, a small step to the wider side shows whether it is the top.
Spot refined(const Value& value, Spot low, Spot top, Spot high) {
  constexpr double small_step = 0.4 * shortest_told, golden = 0.381966;
  for (int step = 0; step < 60 && high.at - low.at > shortest_told; ++step) {
    const double before = top.at - low.at, after = high.at - top.at;
    const double wider = after > before ? after : -before;
    double at = before > 0 && after > 0 ? vertex(low, top, high) : top.at;
    if (step % 3 == 2 || !(at > low.at && at < high.at)) at = top.at + golden * wider;
    if (std::abs(at - top.at) < small_step) at = top.at + std::copysign(small_step, wider);
    const Spot tried{at, value(at)};
    Spot& end = (at > top.at) == (tried.value > top.value) ? low : high;
    end = tried.value > top.value ? std::exchange(top, tried) : tried;
  }
  return top;
}

/// Between samples a value rises by a few percent at most; t e^-t sampled at 0.7 and 1.4 by 6 %.
constexpr double worth_refining = 0.85;

void look_into(const Value& value, const Piece& piece, Highest& best) {
  std::vector<Spot> spots;
  for (const double at : samples(piece)) spots.push_back({at, value(at)});
  const auto top = std::ranges::max_element(spots, {}, &Spot::value);
  if (top->value > best.value) best = {top->value, hours(top->at)};
  if (top->value < worth_refining * best.value || top->value * (1 + rounding) >= piece.bound)
    return;
  const Spot found = refined(value, top == spots.begin() ? *top : *std::prev(top), *top,
                             top + 1 == spots.end() ? *top : *std::next(top));
  if (found.value > best.value) best = {found.value, hours(found.at)};
}

}  // namespace

double value_at(const RoomAir& air, const Measure& measure, Duration at) {
  return Value(air, measure)(at.in(hours));
}

Highest highest(const RoomAir& air, const Measure& measure, Duration from, Duration to,
                const Highest& known) {
  const Value value(air, measure);
  Highest best = known;
  if (const double first = value(from.in(hours)); first > best.value) best = {first, from};
  for (const Piece& piece : value.pieces(from.in(hours), to.in(hours), best.value)) {
    if (piece.bound <= best.value * (1 + rounding)) break;
    look_into(value, piece, best);
  }
  return best;
}

Highest highest(const RoomAir& air, const Measure& measure) {
  return highest(air, measure, Duration{}, hours(air.break_hours().back()));
}

bool stays_within(const RoomAir& air, const Measure& measure, double most, Duration from,
                  Duration to) {
  const Value value(air, measure);
  Highest best{most, Duration{}};
  for (const Piece& piece : value.pieces(from.in(hours), to.in(hours), most)) {
    if (piece.bound <= most * (1 + rounding)) break;
    look_into(value, piece, best);
    if (best.value > most) return false;
  }
  return value(from.in(hours)) <= most;
}

bool stays_within(const RoomAir& air, const Measure& measure, double most) {
  return stays_within(air, measure, most, Duration{}, hours(air.break_hours().back()));
}

std::optional<Duration> last_above(const RoomAir& air, const Measure& measure, double most,
                                   Duration from, Duration to) {
  const Value value(air, measure);
  if (value(to.in(hours)) > most) return to;
  std::vector<Piece> pieces = value.pieces(from.in(hours), to.in(hours), most);
  std::ranges::sort(pieces, std::ranges::greater{}, &Piece::begin);
  for (const Piece& piece : pieces) {
    Highest best{most, {}};
    look_into(value, piece, best);
    if (best.value <= most) continue;
    // From the highest spot to the piece's end the value falls through `most` once, for one
    // solvent.
    double above = best.at.in(hours), under = piece.end;
    for (const double at : samples(piece))
      if (at > above && value(at) > most) above = at;
    if (value(under) > most) return hours(under);
    for (int step = 0; step < 60; ++step) {
      const double middle = (above + under) / 2;
      (value(middle) > most ? above : under) = middle;
    }
    return hours(under);
  }
  return std::nullopt;
}

std::optional<ChangeRate> least_changes(Volume room, const std::vector<VapourSource>& sources,
                                        Duration end, const Measure& measure, double most) {
  // In a steady room the value goes with 1 / changes: its inverse is nearly straight, and where it
  // crosses 1 / most a straight line between two trials finds it soon.
  const auto inverse = [&](double changes) {
    const RoomAir air(room, sources, {{Duration{}, per_hour(changes)}}, end);
    return 1 / std::max(highest(air, measure).value, 1e-300) - 1 / most;
  };
  constexpr double hopeless = 1e5, tolerance = 1e-3;
  double low = 0, at_low = inverse(low);
  if (at_low >= 0) return per_hour(0);
  double high = 1, at_high = inverse(high);
  while (at_high < 0) {
    low = high;
    at_low = at_high;
    high *= 4;
    if (high > hopeless) return std::nullopt;
    at_high = inverse(high);
  }
  // Trials stand a little to either side of where the line crosses, so that both ends close in.
  for (bool above = true; high - low > tolerance * high; above = !above) {
    const double crossing = low + (high - low) * -at_low / (at_high - at_low);
    const double aside = tolerance / 3 * high;
    double trial = above ? crossing + aside : crossing - aside;
    if (!(trial > low && trial < high)) trial = (low + high) / 2;
    const double at_trial = inverse(trial);
    (at_trial >= 0 ? high : low) = trial;
    (at_trial >= 0 ? at_high : at_low) = at_trial;
  }
  return per_hour(high);
}

}  // namespace tackfree
