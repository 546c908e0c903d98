// Check done: every operation accounted for once, and done work dated as the log has it.
#pragma once

#include "tackfree/operations/operation_list.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// What is left out, stands twice, is dated although it is done, or was moved in the past; one
/// sentence each.
std::vector<std::string> wrong_accounts(const OperationList& list, const Schedule& schedule);

/// What the trials of a done coat say of a stage at `at`: reached, not reached, or nothing. A thumb
/// test says nothing of what is thicker than one film, and never counts before the label's own
/// hours, unless the job is faster than the label.
std::optional<bool> tried(const Job& job, const Operation& coat, Stage stage, Instant at,
                          int films = 1);

}  // namespace tackfree
