// Remedy: a change to the room or the hours that gives a step without time a date.
#pragma once

#include "tackfree/base/time.hpp"
#include "tackfree/model/air.hpp"
#include "tackfree/model/work_calendar.hpp"

#include <cstddef>
#include <optional>
#include <variant>

namespace tackfree {

/// What a person could do, as they would write it into the job: under `air`, or in the calendar.
using Change = std::variant<ConditionedAir, AddedHours>;

/// A change that by itself gives a step a date. What warms the room in it is sealed: it has neither
/// flame nor glow. The room is aired as before.
struct Remedy {
  Change change;
  std::size_t operation = 0;        ///< the step; index into OperationList::operations
  Instant begins;                   ///< when the step then begins
  std::optional<Instant> ready_at;  ///< no later than this; nothing: other steps still lack a time
};

}  // namespace tackfree
