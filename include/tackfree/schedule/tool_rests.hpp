// Tool rests: pauses between two coats of a session in which the tool would dry if left alone.
#pragma once

#include "tackfree/operations/operation_list.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <vector>

namespace tackfree {

/// How long a tool may lie between two coats without being cleaned, open or wrapped.
Minutes longest_uncleaned(const Coating& coating, const Method& method);

/// Every pause of more than half an hour. Brushes and rollers are wrapped airtight for up to half a
/// day; anything that hardens in its pot, guns, cloths and longer pauses are cleaned.
/// Source: common practice, no source; the two times assumed.
std::vector<ToolRest> tool_rests(const Job& job, const OperationList& list,
                                 const Schedule& schedule);

/// Is the tool taken up clean for this coat: the first of its session, or one after a cleaning?
bool takes_up_clean_tool(const OperationList& list, const Schedule& schedule,
                         const Operation& coat);

}  // namespace tackfree
