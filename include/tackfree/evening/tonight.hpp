// Tonight: what to do now or next, what must wait until when, how to air, and the oily rags.
#pragma once

#include "tackfree/evening/batch_waits.hpp"
#include "tackfree/evening/oily_rags.hpp"
#include "tackfree/evening/open_faults.hpp"
#include "tackfree/evening/unlogged.hpp"
#include "tackfree/plan/coat_outlook.hpp"
#include "tackfree/plan/plan.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// May a coat of this coating go on at the plan's now?
struct AirNow {
  std::size_t coating = 0;
  std::vector<GateAt> failing;     ///< every rule against it, and when each is kept; none: it may
  std::optional<Instant> changes;  ///< then that ends, or all of it opens, within two weeks
  std::optional<Gate> closes_by;   ///< of air that is fit: the rule that ends it
  /// Of a coat that would be too near the dew point: when, where the air of now is clear of it.
  std::optional<Instant> dew_at;
};

/// How the room is to be open around the coats that are just on and those of the next stretch of
/// work today, by the clock.
struct AiringNow {
  std::vector<AiringSpan> spans;     ///< by the job's habit, not over yet
  std::vector<AiringSpan> proposed;  ///< by the habit that the plan proposes in its place
};

/// When a batch that has its last coats may be used; nothing where that is not within the plan.
struct BatchUse {
  std::size_t batch = 0;
  std::optional<Instant> light_use, full_cure;
};

/// A clock time that a coat sets, of the stretch of work or just put on.
struct CoatClock {
  std::size_t operation = 0;         ///< index into OperationList::operations
  std::optional<Instant> wipe_off;   ///< the last of it comes off again then
  std::optional<Instant> pot_until;  ///< what was mixed first is good until then
};

struct Tonight {
  Temperature temperature;  ///< of the room, now
  Humidity humidity;
  std::optional<Instant> read_at;  ///< the last reading that these two still owe more to than half
  std::vector<std::size_t> work;  ///< steps of the next stretch of work, in order; empty: none left
  Interval stretch;               ///< of that work, set-up and clean-up with it
  bool today = false;             ///< the stretch begins on the local day of now
  std::optional<std::size_t> then;  ///< the step after it, or the rest of one that is split
  Instant then_at;                  ///< when that begins
  std::optional<AirNow> air;  ///< for the next coat, where nothing but air and hours holds it today
  std::vector<BatchWait> waits;
  std::vector<BatchUse> uses;
  std::vector<OpenFault> faults;
  std::vector<CoatClock> clocks;
  std::optional<Instant> dust_free_at;  ///< a coat is still wet to dust until then
  AiringNow airing;
  OilyRags rags;
  Unlogged unlogged;  ///< by the plans known before; filled by who knows them
};

/// The next stretch of work is the next of the plan's work sessions.
Tonight tonight(const Plan& plan);

}  // namespace tackfree
