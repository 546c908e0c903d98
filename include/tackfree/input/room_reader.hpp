// Room reader: the room of a job, how it is aired, heated and dried, and the boards that lie in it.
#pragma once

#include "tackfree/model/air.hpp"
#include "tackfree/model/airing.hpp"
#include "tackfree/model/room.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace tackfree {

/// The words for how far a room is open, by Opening.
inline constexpr std::array<std::string_view, 4> opening_words{"closed", "ajar", "open",
                                                               "open_and_fan"};

/// The object `room`, or the defaults where there is none. Figures of its `airing` override those
/// of `changes` as the person's own.
Room read_room(JsonCursor& job, AirChanges& changes);

/// `indoors` of the job's air: how the room follows outdoors, and its heating.
Indoors read_indoors(JsonCursor& object, const Zone& zone);

/// `boards` of the job's air.
Boards read_boards(JsonCursor& object);

/// One object of `air.conditioned`; times are local to `zone`. Nothing, with Problems, where it
/// changes nothing or only one end of its time is given.
std::optional<ConditionedAir> read_conditioned_air(JsonCursor& object, const Zone& zone);

}  // namespace tackfree
