// Aired work: the work dated on the air that airing after its own coats leaves in the room.
#pragma once

#include "tackfree/plan/dated_work.hpp"

#include <cstddef>
#include <vector>

namespace tackfree {

/// When the dated coats have the room open, and how many times as fast it then loses heat: an
/// opening adds 0.333 Wh/(m3 K) of the flow beyond the closed room's. Source: ISO 13789, heat
/// capacity of air per volume 1200 J/(m3 K) (from memory). Where the job says no loss, it is
/// usual_heat_loss. Empty without a habit, without the room's volume, and where the air given is
/// the room's own, which is taken as it is.
std::vector<FasterLoss> openings(const DatedWork& work);

/// The air of the room with the openings of these coats.
AirSeries air_as_aired(const DatedWork& work);

/// The work dated on the air that its own airing leaves: it is dated, the room aired as that says,
/// the work dated again, until the same hours come out; see AiredAir. At most four times; where
/// hours do not settle, the room counts as open whenever a coat could have it open, which no
/// schedule within the person's hours outdoes. What the searches do is taken off `effort`.
DatedWork date_aired_work(const WorkAtHand& work, Interval span, solver::Effort* effort = nullptr);

/// The same in `most_sessions` or fewer.
InSessions date_aired_work_in_sessions(const WorkAtHand& work, Interval span,
                                       std::size_t most_sessions, solver::Effort* effort = nullptr);

}  // namespace tackfree
