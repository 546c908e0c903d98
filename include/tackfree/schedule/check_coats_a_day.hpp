// Check coats a day: coats that melt together and are too many on a side in one day.
#pragma once

#include "tackfree/operations/operation_list.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// Part of the checker, rule 4: a side gets so many on one local day; what is washed off again does
/// not count. One sentence for each coat that is too many and not done.
std::vector<std::string> broken_coats_a_day(const Job& job, const OperationList& list,
                                            const Schedule& schedule);

}  // namespace tackfree
