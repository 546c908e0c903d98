// Airing: how far a room is opened while coating and after it, and how much air that brings.
#pragma once

#include "tackfree/base/sourced.hpp"
#include "tackfree/base/units.hpp"

#include <optional>

namespace tackfree {

/// How far the room is open, the least first.
enum class Opening { closed, ajar, open, open_and_fan };

/// What a person does with door, window and fan: while coating (set-up included) and for some hours
/// after the last coat of a session. Then the room is closed.
struct AiringHabit {
  Opening while_coating = Opening::closed;
  Opening after = Opening::closed;
  Duration after_for;
  friend bool operator==(const AiringHabit&, const AiringHabit&) = default;
};

/// A fan's flow as rated on the box, or as measured at its place.
struct Fan {
  AirFlow flow;
  bool measured = false;
};

/// Air changes by opening, and how far they can be believed; the person's own override the trade's.
struct AirChanges {
  Sourced<ChangeRate> closed, ajar, open;
  Sourced<ChangeRate> most_credited;     ///< no more than this without a measured flow
  Sourced<Fraction> fan_delivers;        ///< of a rated flow
  Sourced<double> mixing_one_opening;    ///< the air of the room mixes badly: 1 perfect, 10 poor
  Sourced<double> mixing_through_draft;  ///< with a fan and an opening across from it
};

}  // namespace tackfree
