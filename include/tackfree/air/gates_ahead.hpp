// Gates ahead: the rules that a coat would break, whenever it is begun from some hour on.
#pragma once

#include "tackfree/air/coating_limits.hpp"

#include <array>
#include <vector>

namespace tackfree {

/// Looks at the air of each instant of its grid once, however many begins are asked about.
class GatesAhead {
 public:
  /// Of coats that take `putting_on`, begun at `from` or whole grids of minutes later. The others
  /// outlive it.
  GatesAhead(const CoatingLimits& limits, const AirSeries& air, const DryingClock& clock,
             Instant from, Minutes putting_on, Minutes grid);

  /// Every rule that a coat begun so many grids later breaks, 0 or more. Where it is not touch-dry
  /// within the series, cold_before_dry is among them.
  std::vector<Gate> failing(int start);

 private:
  /// What is wrong with the air at one instant.
  enum Wrong { cold, warm, humid, near_dew, under_hold, cold_air, wrong_count };
  using Counts = std::array<int, wrong_count>;

  Counts wrong_at(Instant at) const;
  /// Is it so at some instant from `first` to `last`, both counted?
  bool ever(Wrong wrong, int first, int last);

  const CoatingLimits& limits_;
  const AirSeries& air_;
  const DryingClock& clock_;
  Instant from_;
  Minutes putting_on_, grid_;
  std::vector<Counts> before_{Counts{}};  ///< how often, before each instant that was looked at
};

}  // namespace tackfree
