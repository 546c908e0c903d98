#include "tackfree/schedule/grid.hpp"

namespace tackfree {

using solver::Slot;

namespace {

Slot floor_div(Minutes amount, Minutes slot_length) {
  const auto quotient = amount / slot_length;
  return static_cast<Slot>(amount % slot_length < Minutes(0) ? quotient - 1 : quotient);
}

}  // namespace

Slot Grid::slot_up(Instant at) const { return -floor_div(span.begin - at, slot_length); }
Slot Grid::slot_down(Instant at) const { return floor_div(at - span.begin, slot_length); }
Slot Grid::slots_up(Duration amount) const {
  const Minutes whole = whole_minutes_up(amount);
  return static_cast<Slot>((whole + slot_length - Minutes(1)) / slot_length);
}

}  // namespace tackfree
