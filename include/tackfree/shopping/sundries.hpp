// Sundries: what else to have at hand: abrasives, applicators, cloths, gloves and small things.
#pragma once

#include "tackfree/fumes/respirator.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/shopping/tool_use.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// Something to have at hand besides the coatings, and what it is for: the facts that apply to it.
struct Sundry {
  enum class Item {
    applicator,     ///< by coating, method, sessions and cleanings
    wrap,           ///< airtight, for a tool
    abrasive,       ///< by grit and area
    dusting_cloth,  ///< by coating
    for_touch,      ///< by touch
    masking_tape,
    gloves,  ///< pairs, one a session
    eye_protection,
    respirator,  ///< by respirator: for each who coats
    suit,        ///< with a hood
    dust_mask,   ///< by work
    rag,         ///< by each_session and sessions
    lidded_can,
    stirring_stick,
    hardener,       ///< by coating
    measuring_cup,  ///< for the mixing ratio of two parts
    strainer
  };
  enum class Unit { sheet, piece, metre };

  Item item = Item::rag;
  double amount = 0;  ///< whole ones; of tape the metres that are stuck on
  Origin origin = Origin::practice;
  std::optional<std::size_t> coating, method;  ///< indices into Job::coatings, data.methods
  std::optional<Grit> grit;
  std::optional<std::size_t> touch;  ///< index into Job::data.touches
  int sessions = 0;
  int cleanings = 0;     ///< after pauses within a session
  int each_session = 0;  ///< so many of it
  Area area;             ///< sanded with it
  Duration work;         ///< that it serves for
  std::optional<Respirator> respirator;

  Unit unit() const {
    if (item == Item::masking_tape) return Unit::metre;
    return item == Item::abrasive ? Unit::sheet : Unit::piece;
  }
};

/// Only what this job needs, in the order in which a person would look for it on the shelves.
/// Source of all amounts: common practice, no source.
std::vector<Sundry> sundries(const Job& job, const JobVolumes& volumes, const OperationList& list,
                             const std::vector<ToolUse>& uses, Length tape);

}  // namespace tackfree
