#include "tackfree/fumes/vapour_left.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Instant at_hour(int hour) { return Instant{Minutes(60 * hour)}; }

RoomJudgement one_stretch() {
  StretchJudgement stretch;
  stretch.coating = {at_hour(8), at_hour(9)};
  stretch.under_limit_at = at_hour(10);
  stretch.under_tenth_at = at_hour(14);
  RoomJudgement room;
  room.stretches = {stretch};
  return room;
}

}  // namespace

// Seen failing: doors were sanded by machine forty minutes after the spraying, in the one room.
TEST_CASE("vapour keeps motors out longer than hands, and nobody before the coat") {
  const RoomJudgement room = one_stretch();
  CHECK_FALSE(vapour_left_until(room, at_hour(7), WorkAmongVapour::with_sparks));
  CHECK(vapour_left_until(room, at_hour(9), WorkAmongVapour::by_hand) == at_hour(10));
  CHECK_FALSE(vapour_left_until(room, at_hour(10), WorkAmongVapour::by_hand));
  CHECK(vapour_left_until(room, at_hour(10), WorkAmongVapour::with_sparks) == at_hour(14));
  CHECK_FALSE(vapour_left_until(room, at_hour(14), WorkAmongVapour::with_sparks));
}

TEST_CASE("vapour that does not fall before the next coats lasts until they begin") {
  RoomJudgement room = one_stretch();
  room.stretches.push_back(room.stretches[0]);
  room.stretches[0].under_tenth_at.reset();
  room.stretches[1].coating.begin = at_hour(30);
  CHECK(vapour_left_until(room, at_hour(20), WorkAmongVapour::with_sparks) == at_hour(30));
}
