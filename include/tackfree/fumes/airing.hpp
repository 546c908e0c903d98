// Airing: when the room is how far open over the dated plan, and how much air that brings.
#pragma once

#include "tackfree/fumes/room_air.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <vector>

namespace tackfree {

/// One stretch of coating, a session: with its set-up, up to the end of its last coat.
struct CoatingStretch {
  Interval time;
  std::vector<std::size_t> steps;  ///< indices into Schedule::steps, in order
};

/// Every stretch of coating of the schedule, in order of time.
std::vector<CoatingStretch> coating_stretches(const OperationList& list, const Schedule& schedule);

/// A time with the room open, one way all along.
struct AiringSpan {
  Interval time;
  Opening opening = Opening::ajar;
};

/// When the room is open by this habit, in order, without overlap; closed the rest of the time.
/// Where two stretches of coating ask for different openings the wider one holds.
std::vector<AiringSpan> airing_spans(const std::vector<CoatingStretch>& stretches,
                                     const AiringHabit& habit);

/// By how much the room's air has to be over-supplied because it mixes badly.
double mixing_factor(const AirChanges& changes, Opening opening);

/// Air changes that work: flow / (K x volume). A fan's rated flow counts in part; nothing over
/// `most_credited` is believed unless the fan's flow was measured. Source: the reckoning with K is
/// ACGIH, Industrial Ventilation (from memory); the figures carry their own origins. A fan that
/// only draws or only blows and the flow through the opening add up as the root of the sum of their
/// squares. Source: ASHRAE Handbook, Fundamentals, chapter on ventilation and infiltration,
/// superposition (from memory).
ChangeRate working_changes(const Room& room, const AirChanges& changes, Opening opening);

/// The spans as air changes since `start`.
std::vector<AirStretch> air_stretches(const std::vector<AiringSpan>& spans, Instant start,
                                      const Room& room, const AirChanges& changes);

}  // namespace tackfree
