// Vapour left: whether the room still holds vapour of wet coats when other work is done in it.
#pragma once

#include "tackfree/fumes/room_judgement.hpp"

#include <optional>

namespace tackfree {

/// What the vapour left must be under for the work: a motor or a spark needs less of it than lungs.
enum class WorkAmongVapour { by_hand, with_sparks };

/// Until when the room at `at` holds too much vapour of the coats put on before: by hand until it
/// is below the 8-hour limits, with sparks until it is below a tenth of them. Where it does not
/// fall so far before the next coats, until their work begins. Nothing when it holds less. Source
/// of the tenth: assumed, as for flames.
std::optional<Instant> vapour_left_until(const RoomJudgement& room, Instant at,
                                         WorkAmongVapour work);

}  // namespace tackfree
