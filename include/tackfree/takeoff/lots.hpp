// Lots: the space that parts take while they dry, and batches split so that each lot has room.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/job.hpp"

namespace tackfree {

/// A batch is split into no more lots than these.
inline constexpr std::size_t most_lots = 100;

/// The floor that one piece covers as it lies or stands on points: its greatest length by its
/// greatest width. Of an area somebody measured: that area.
Area covered_by(const Shape& shape);

/// What the batch takes in its room while it dries: m2, or places, as the room is measured; 0 where
/// there is room for any number.
double space_taken(const Job& job, std::size_t batch);

/// What the room holds, in the unit of `space_taken`; nothing where it holds any number.
std::optional<double> space_in_room(const Job& job, std::size_t batch);

/// As space is compared, by the planner and by the checker: hundredths of a square metre or of a
/// place, rounded up, of each batch and of the room alike, so that what fills its room fits.
int in_hundredths(double space);

/// Splits each batch that is too large for its room into as few lots as the order of its parts
/// allows; each lot becomes a batch, with its share of the rows of the parts list. A piece that is
/// larger than the room is a Problem.
void split_into_lots(Job& job, Problems& problems);

}  // namespace tackfree
