// Sundries: what else to have at hand: thinner, abrasives, applicators, cloths and gloves.
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
  std::string what;  ///< `mineral spirits, to thin and to clean`
  double amount = 0;
  enum class Unit { litre, sheet, piece, metre } unit = Unit::piece;
  std::string why;  ///< `for 4.1 m2`
  Origin origin = Origin::practice;
};

/// Solvent that cleans the tools of one session of a coating that is not cleaned with water.
/// Source: common practice, no source.
inline constexpr Volume cleaner_per_session = litres(0.1);

/// Only what this job needs, in the order in which a person would look for it on the shelves.
/// Thinner is for nine jobs in ten, as the coating is. Source of all amounts: common practice, no
/// source.
std::vector<Sundry> sundries(const Job& job, const JobVolumes& volumes, const OperationList& list,
                             const std::vector<ToolUse>& uses, Length tape);

}  // namespace tackfree
