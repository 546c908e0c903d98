// Recoat slack: until when the coat below takes another one unsanded, coat by coat.
#pragma once

#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/schedule/missed_windows.hpp"

#include <vector>

namespace tackfree {

/// Every coat of the plan that goes on unsanded within a window of the coat below.
std::vector<RecoatSlack> recoat_slacks(const DatedWork& work);

}  // namespace tackfree
