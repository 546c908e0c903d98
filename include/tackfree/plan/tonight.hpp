// Tonight: what to do now or next, what the air allows, and how far the waiting coats are.
#pragma once

#include "tackfree/plan/coat_outlook.hpp"
#include "tackfree/plan/plan.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// A coat that other work, or the use of the piece, still waits for.
struct WaitingCoat {
  std::size_t step = 0;  ///< index into Schedule::steps
  Stage towards = Stage::sand;
  double share = 0;              ///< of the drying that it needs by all that is known, up to 1
  std::optional<Instant> ready;  ///< nothing where that is not within the plan
  bool failed = false;           ///< a trial failed and none was passed since
};

/// May a coat of this coating go on at the plan's now?
struct AirNow {
  std::size_t coating = 0;
  std::vector<GateAt> failing;     ///< every rule against it, and when each is kept; none: it may
  std::optional<Instant> changes;  ///< then that ends, or all of it opens, within two weeks
  std::optional<Gate> closes_by;   ///< of air that is fit: the rule that ends it
};

struct Tonight {
  Temperature temperature;  ///< of the room, now
  Humidity humidity;
  std::optional<Instant> read_at;  ///< the last reading that these two still owe more to than half
  std::vector<std::size_t> work;  ///< steps of the next stretch of work, in order; empty: none left
  Interval stretch;               ///< of that work, set-up and clean-up with it
  std::optional<std::size_t> then;  ///< the step after it
  std::optional<AirNow> air;        ///< for the coating of the next coat
  std::vector<WaitingCoat> waiting;
  std::optional<Instant> dust_free_at;  ///< a coat is still wet to dust until then
};

/// Pauses of up to 30 minutes do not end a stretch of work (assumed).
Tonight tonight(const Plan& plan);

}  // namespace tackfree
