// Sundries: what else to have at hand: abrasives, applicators, cloths, gloves and small things.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/shopping/tool_use.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// Something to have at hand besides the coatings.
struct Sundry {
  std::string what;  ///< `masking tape`
  double amount = 0;
  enum class Unit { sheet, piece, metre } unit = Unit::piece;
  std::string why;  ///< `for 4.1 m2`
  Origin origin = Origin::practice;
};

/// Only what this job needs, in the order in which a person would look for it on the shelves.
/// Source of all amounts: common practice, no source.
std::vector<Sundry> sundries(const Job& job, const JobVolumes& volumes, const OperationList& list,
                             const std::vector<ToolUse>& uses, Length tape);

}  // namespace tackfree
