#include "tackfree/schedule/closing_rules.hpp"

namespace tackfree {

HeldBy held_by(solver::Rule rule) {
  if (gate_of(rule)) return HeldBy::air;
  switch (rule) {
    case rules::quiet:
      return HeldBy::quiet_hours;
    case rules::not_before:
      return HeldBy::not_before;
    case rules::no_coating:
      return HeldBy::no_coating_day;
    case rules::pinned:
      return HeldBy::pin;
    case rules::due:
      return HeldBy::due;
    case rules::as_last:
      return HeldBy::last_plan;
    case rules::put_off:
      return HeldBy::order;
    default:
      return HeldBy::calendar;
  }
}

std::optional<Gate> gate_of(solver::Rule rule) {
  if (rule < rules::first_gate || rule >= rules::first_gate + gate_count) return std::nullopt;
  return static_cast<Gate>(rule - rules::first_gate);
}

}  // namespace tackfree
