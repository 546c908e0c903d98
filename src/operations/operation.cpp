#include "tackfree/operations/operation.hpp"

namespace tackfree {

std::string_view word_for(OperationKind kind) {
  switch (kind) {
    case OperationKind::sand_bare:
      return "sand bare";
    case OperationKind::raise_grain:
      return "raise grain";
    case OperationKind::sand_raised:
      return "sand raised grain";
    case OperationKind::fill_pores:
      return "fill pores";
    case OperationKind::sand_filler:
      return "sand filler";
    case OperationKind::dust_off:
      return "dust off";
    case OperationKind::coat:
      return "coat";
    case OperationKind::wipe_off:
      return "wipe off";
    case OperationKind::turn_over:
      return "turn over";
    case OperationKind::sand_between:
      return "sand between";
    case OperationKind::fit_hardware:
      return "fit hardware";
    case OperationKind::finishing_touch:
      return "finishing touch";
    case OperationKind::repair:
      return "repair";
  }
  return "";
}

std::string_view word_for(Side side) {
  switch (side) {
    case Side::back:
      return "back";
    case Side::show:
      return "show";
    case Side::both:
      break;
  }
  return "both";
}

}  // namespace tackfree
