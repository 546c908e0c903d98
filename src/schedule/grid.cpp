#include "tackfree/schedule/grid.hpp"

namespace tackfree {

using solver::Slot;

namespace {

Slot floor_div(Minutes amount, Minutes step) {
  const auto quotient = amount / step;
  return static_cast<Slot>(amount % step < Minutes(0) ? quotient - 1 : quotient);
}

}  // namespace

Slot Grid::slot_up(Instant at) const { return -floor_div(span.begin - at, step); }
Slot Grid::slot_down(Instant at) const { return floor_div(at - span.begin, step); }
Slot Grid::slots_up(Duration amount) const {
  const Minutes whole = whole_minutes_up(amount);
  return static_cast<Slot>((whole + step - Minutes(1)) / step);
}

}  // namespace tackfree
