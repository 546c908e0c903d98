// Shop rules: people with hours of their own, space to dry, and dates that are set for a batch.
#pragma once

#include "tackfree/model/part.hpp"
#include "tackfree/model/work_calendar.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// Somebody who does the work, with hours that hold what the shop's calendar says for all.
struct Person {
  std::string name;
  WorkCalendar hours;
  int line = 0;
};

/// A room in which coated parts lie until they can be handled. Dust in one room does no harm in
/// another. Without space or places it takes any number of parts.
struct DryingRoom {
  std::string name;
  std::optional<Area> space;  ///< floor, benches and racks, as far as parts may cover them
  std::optional<int> places;  ///< points, hooks or shelves: one for each piece
  int line = 0;
};

/// A coat that goes on on one local day, begun no sooner and done no later than two clock times.
struct Pin {
  std::string step;  ///< the system's step; empty where it has one only
  int coat = 1;
  std::optional<Side> side;  ///< nothing: every side of the coat
  Date on;
  DayWindow between{0, 24 * 60};
  int line = 0;
};

/// What a person sets for one batch.
struct BatchRules {
  std::vector<Pin> pins;
  std::vector<Date> no_coating_on;    ///< local days on which no coat goes on; the job's among them
  std::optional<Instant> not_before;  ///< no work sooner
  std::optional<Instant> ready_by;    ///< light use is wanted by then: kept where it can be
  std::optional<std::size_t> room;    ///< index into Job::rooms; nothing where there are none
  std::optional<Area> space;  ///< what the batch takes while it dries; else what its parts cover
  std::string lot_of;         ///< the batch that was split for want of space; empty for a whole one
  int lot = 0;                ///< from 1
  int lots = 0;
};

}  // namespace tackfree
