// Dry coats: which coats a session's work waits for, and when each is dry enough.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/schedule/work_sessions.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace tackfree {

struct DryCoat {
  std::size_t coat = 0;        ///< index into OperationList::operations
  std::optional<Stage> stage;  ///< nothing: dry enough by its hours at the label's conditions
  Instant at;

  bool operator==(const DryCoat&) const = default;
};

/// In the order of the session's work, each coat once, by the latest of its waits. Work that is
/// done waits for nothing.
std::vector<DryCoat> dry_coats(const Plan& plan, const WorkSession& session);

}  // namespace tackfree
