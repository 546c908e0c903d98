#include "tackfree/fumes/vapour_left.hpp"

namespace tackfree {

std::optional<Instant> vapour_left_until(const RoomJudgement& room, Instant at,
                                         WorkAmongVapour work) {
  std::optional<Instant> left;
  for (std::size_t i = 0; i < room.stretches.size(); ++i) {
    const StretchJudgement& stretch = room.stretches[i];
    if (stretch.coating.begin > at) continue;
    std::optional<Instant> until =
        work == WorkAmongVapour::with_sparks ? stretch.under_tenth_at : stretch.under_limit_at;
    if (!until && i + 1 < room.stretches.size()) until = room.stretches[i + 1].coating.begin;
    if (until && *until > at && (!left || *until > *left)) left = until;
  }
  return left;
}

}  // namespace tackfree
