#include "tackfree/words/planning_words.hpp"

#include <fmt/format.h>

namespace tackfree {

std::string planning_words(const PlanningNow& now) {
  switch (now.stage) {
    case PlanningStage::air_areas_litres:
      break;
    case PlanningStage::dates:
      return "dating the steps";
    case PlanningStage::fewer_sessions:
      return fmt::format("looking for fewer than {} sessions", now.sessions);
    case PlanningStage::waits:
      return "explaining the waits";
    case PlanningStage::fumes:
      return "judging the fumes";
    case PlanningStage::tins_and_sundries:
      return "counting tins and sundries";
    case PlanningStage::check:
      return "checking the schedule against its rules";
  }
  return "working out air, areas and litres";
}

}  // namespace tackfree
