// Stage listener: what is being worked out, told as it begins.
#pragma once

#include <cstddef>
#include <functional>

namespace tackfree {

enum class PlanningStage {
  air_areas_litres,
  dates,
  fewer_sessions,
  waits,
  fumes,
  tins_and_sundries,
  check
};

/// What is being worked out.
struct PlanningNow {
  PlanningStage stage = PlanningStage::air_areas_litres;
  std::size_t sessions = 0;  ///< fewer than these are looked for (fewer_sessions)
};

/// Is told what is being worked out, as it begins.
using StageListener = std::function<void(const PlanningNow& now)>;

}  // namespace tackfree
