#include "tackfree/fumes/exposure.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

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

  /// The smooth stretches from `from` to `to`, those of the highest bound first.
  std::vector<Piece> pieces(double from, double to) const {
    const std::vector<double>& breaks = air_.break_hours();
    std::vector<double> marks{from, to};
    for (auto hour = std::ranges::lower_bound(breaks, from - window_);
         hour != breaks.end() && *hour < to; ++hour)
      for (const double mark : {*hour, *hour + window_})
        if (mark > from && mark < to) marks.push_back(mark);
    std::ranges::sort(marks);
    marks.erase(std::unique(marks.begin(), marks.end()), marks.end());
    std::vector<Piece> result;
    const auto first = std::ranges::upper_bound(breaks, from);
    std::size_t segment =
        first == breaks.begin() ? 0 : static_cast<std::size_t>(first - breaks.begin()) - 1;
    for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
      while (segment + 1 < breaks.size() && breaks[segment + 1] <= marks[i]) ++segment;
      result.push_back({marks[i], marks[i + 1], bound(marks[i], marks[i + 1], segment)});
    }
    std::ranges::stable_sort(result, std::ranges::greater{}, &Piece::bound);
    return result;
  }

 private:
  double dose(double hour) const { return hour <= 0 ? 0.0 : air_.sum_in_air_hours(weights_, hour); }

  /// A moment: what the segment can hold. A mean: no more than the highest moment of its windows,
  /// nor than the whole dose from the first window's start to the last one's end.
  double bound(double begin, double end, std::size_t segment) const {
    double most = air_.most_in_air(weights_, segment);
    if (window_ <= 0) return most;
    const std::vector<double>& breaks = air_.break_hours();
    for (std::size_t before = segment; before > 0 && breaks[before] > begin - window_; --before)
      most = std::max(most, air_.most_in_air(weights_, before - 1));
    return std::min(most, (dose(end) - dose(begin - window_)) / window_);
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

/// Golden section for the highest value between two moments.
Highest refined(const Value& value, double low, double high) {
  const double ratio = (std::sqrt(5.0) - 1) / 2;
  double inner = high - ratio * (high - low), outer = low + ratio * (high - low);
  double at_inner = value(inner), at_outer = value(outer);
  for (int step = 0; step < 60 && high - low > shortest_told; ++step) {
    if (at_inner >= at_outer) {
      high = outer;
      outer = inner;
      at_outer = at_inner;
      inner = high - ratio * (high - low);
      at_inner = value(inner);
    } else {
      low = inner;
      inner = outer;
      at_inner = at_outer;
      outer = low + ratio * (high - low);
      at_outer = value(outer);
    }
  }
  return at_inner >= at_outer ? Highest{at_inner, hours(inner)} : Highest{at_outer, hours(outer)};
}

/// Between samples a value rises by a few percent at most; t e^-t sampled at 0.7 and 1.4 by 6 %.
constexpr double worth_refining = 0.85;

void look_into(const Value& value, const Piece& piece, Highest& best) {
  const std::vector<double> at = samples(piece);
  std::size_t top = 0;
  double top_value = -1;
  for (std::size_t i = 0; i < at.size(); ++i)
    if (const double here = value(at[i]); here > top_value) {
      top = i;
      top_value = here;
    }
  if (top_value > best.value) best = {top_value, hours(at[top])};
  if (top_value < worth_refining * best.value) return;
  const Highest found =
      refined(value, at[top == 0 ? 0 : top - 1], at[std::min(top + 1, at.size() - 1)]);
  if (found.value > best.value) best = found;
}

constexpr double rounding = 1e-12;

}  // namespace

double value_at(const RoomAir& air, const Measure& measure, Duration at) {
  return Value(air, measure)(at.in(hours));
}

Highest highest(const RoomAir& air, const Measure& measure, Duration from, Duration to,
                const Highest& known) {
  const Value value(air, measure);
  Highest best = known;
  if (const double first = value(from.in(hours)); first > best.value) best = {first, from};
  for (const Piece& piece : value.pieces(from.in(hours), to.in(hours))) {
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
  for (const Piece& piece : value.pieces(from.in(hours), to.in(hours))) {
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
  std::vector<Piece> pieces = value.pieces(from.in(hours), to.in(hours));
  std::ranges::sort(pieces, std::ranges::greater{}, &Piece::begin);
  for (const Piece& piece : pieces) {
    if (piece.bound <= most) continue;
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
