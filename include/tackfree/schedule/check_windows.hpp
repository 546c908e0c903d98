// Check windows: coats that the schedule puts on past the recoat window of an unsanded one.
#pragma once

#include "tackfree/operations/operation_list.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// Part of the checker, rule 2: what is not sanded in between goes on within the window of the coat
/// below. One sentence for each coat that does not.
std::vector<std::string> broken_windows(const Job& job, const OperationList& list,
                                        const Schedule& schedule);

}  // namespace tackfree
