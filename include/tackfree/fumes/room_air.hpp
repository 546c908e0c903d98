// Room air: solvent on the wet coats and in a well-mixed room, exact from change to change.
#pragma once

#include "tackfree/base/units.hpp"

#include <cstddef>
#include <vector>

namespace tackfree {

/// A stretch in which solvent leaves the tin at an even pace; begin = end means all at once.
struct Application {
  Duration begin, end;  ///< since the start of the reckoning, 0 <= begin <= end
  Mass solvent;
  Fraction flashed_off;  ///< goes straight into the air, as from a spray gun
};

/// One solvent: what is put on, and the share of what lies wet that leaves in an hour.
struct VapourSource {
  ChangeRate release;  ///< over 0
  std::vector<Application> applications;
  Mass in_air;  ///< at the start, from before
};

/// Air changes from a time on, mixing factor already taken off: N = flow / (K x volume), N >= 0.
struct AirStretch {
  Duration from;
  ChangeRate changes;
};

/// What an amount of 1 comes to that falls by `rate` an hour, after `hours`.
struct Decay {
  Decay(double rate, double hours);
  double rate, hours;
  double left;  ///< e^-x, where x = rate x hours
  double mean;  ///< of what was left until then: (1 - e^-x) / x, 1 at 0
  double hours_of_it() const { return hours * mean; }
};

/// The vapour of several solvents in one room over time. With W grams wet and m grams in the air,
///     W' = S - k W,   m' = F + k W - N m
/// where S and F are what goes on the work and straight into the air. Between changes of S, F and N
/// the solution is exact. All coats of a solvent share one W and one m: the equations are linear,
/// so coats add up and the work grows with the number of coats, not with its square. Source: mass
/// balance of a well-mixed room with first-order release; the form for wood finishes as in Tichenor
/// and Guo, Environ. Int. 17 (1991) 317.
class RoomAir {
 public:
  /// `stretches` are in order of time; before the first the room is taken as still (N = 0).
  RoomAir(Volume room, const std::vector<VapourSource>& sources,
          const std::vector<AirStretch>& stretches, Duration end);

  /// Times at which something changes, in order: the first is 0, the last the end.
  const std::vector<double>& break_hours() const { return breaks_; }
  Volume room() const { return room_; }
  /// Sums over the sources, one weight for each, of grams in the air and of gram-hours since the
  /// start, at an hour.
  double sum_in_air(const std::vector<double>& weights, double hour) const;
  double sum_in_air_hours(const std::vector<double>& weights, double hour) const;
  /// What the first sum cannot pass from break `segment` to the next: each source at its own most.
  double most_in_air(const std::vector<double>& weights, std::size_t segment) const;

 private:
  /// Everything in hours, grams and gram-hours.
  struct State {
    double wet = 0, in_air = 0;
    double in_air_hours = 0;  ///< integral of what is in the air since the start
  };
  /// What holds in one segment for one source.
  struct Feed {
    double on_work = 0, into_air = 0;  ///< grams an hour
  };
  struct Place {
    std::size_t segment = 0;
    double hours_on = 0;
  };
  std::size_t segment_at(double hour) const;
  Place place(double hour) const;
  /// Hours into a segment, and what its air changes leave by then: the same for all sources.
  struct Moment {
    std::size_t segment;
    Decay aired;
  };
  Moment moment(const Place& place) const;
  double in_air_after(std::size_t source, const Moment& moment, const Decay& released) const;
  double in_air_hours_after(std::size_t source, const Moment& moment, const Decay& released) const;
  State advanced(std::size_t source, const Moment& moment) const;
  double most_of(std::size_t source, std::size_t segment) const;
  void set_breaks(const std::vector<VapourSource>& sources,
                  const std::vector<AirStretch>& stretches, double end);
  /// Every segment whole, in order.
  std::vector<Moment> segment_ends() const;
  void run(std::size_t source, const VapourSource& from, const std::vector<Moment>& ends);

  std::size_t at(std::size_t source, std::size_t segment) const {
    return source * breaks_.size() + segment;
  }

  Volume room_;
  std::vector<double> breaks_;
  std::vector<double> changes_;  ///< by segment
  std::vector<double> release_;  ///< by source
  std::vector<Feed> feeds_;      ///< by source and segment
  std::vector<State> states_;    ///< by source and break, jumps included
};

}  // namespace tackfree
