// Air cases: rooms and sources in the units of the worked examples: m3, g, hours, mg/m3.
#pragma once

#include "tackfree/fumes/exposure.hpp"

#include <cmath>
#include <cstddef>
#include <vector>

#include <doctest/doctest.h>

namespace tackfree::testing {

/// A printed figure and how far from it the code may be: half of its last digit and a little.
inline void check_near(double found, double printed, double within) {
  CHECK(std::abs(found - printed) <= within);
}

/// A coat: grams, from when, for how long (0: all at once), share flashed off.
struct Coat {
  double mass = 0, begin = 0, length = 0, flashed = 0;
};

inline VapourSource source_of(double release, const std::vector<Coat>& coats) {
  VapourSource source{.release = per_hour(release), .applications = {}, .in_air = {}};
  for (const Coat& coat : coats)
    source.applications.push_back({hours(coat.begin), hours(coat.begin + coat.length),
                                   grams(coat.mass), fraction(coat.flashed)});
  return source;
}

/// Air flow in m3/h from an hour on.
struct FlowFrom {
  double hour = 0, flow = 0;
};

inline RoomAir room_of(double volume, const std::vector<VapourSource>& sources,
                       const std::vector<FlowFrom>& flows, double end = 400) {
  std::vector<AirStretch> stretches;
  for (const FlowFrom& flow : flows)
    stretches.push_back({hours(flow.hour), per_hour(flow.flow / volume)});
  return {cubic_metres(volume), sources, stretches, hours(end)};
}

/// One solvent in mg/m3: a limit of 1 mg/m3 makes sums over limits concentrations.
inline Measure in_mg(double window = 0) { return {{milligrams_per_cubic_metre(1)}, hours(window)}; }
inline constexpr double quarter_hour = 0.25;

/// Weights that leave one source of a sum over all.
inline std::vector<double> only(std::size_t source) {
  std::vector<double> weights(source + 1, 0.0);
  weights.back() = 1;
  return weights;
}
inline MassPerVolume concentration(const RoomAir& air, std::size_t source, Duration at) {
  return grams(air.sum_in_air(only(source), at.in(hours))) / air.room();
}
inline double mg_at(const RoomAir& air, double hour) {
  return concentration(air, 0, hours(hour)).in(milligrams_per_cubic_metre);
}
/// The mean of one source from an hour to another, from < to.
inline double mean_mg(const RoomAir& air, double from, double to) {
  const double gram_hours = air.sum_in_air_hours(only(0), to) - air.sum_in_air_hours(only(0), from);
  return (grams(gram_hours / (to - from)) / air.room()).in(milligrams_per_cubic_metre);
}
inline double hour_under(const RoomAir& air, double most) {
  const Duration end = hours(air.break_hours().back());
  return last_above(air, in_mg(), most, Duration{}, end).value_or(Duration{}).in(hours);
}

}  // namespace tackfree::testing
