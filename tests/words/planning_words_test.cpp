#include "tackfree/words/planning_words.hpp"

#include <set>

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("each stage of planning is told in words of its own, with what is looked for") {
  std::set<std::string> words;
  for (const PlanningStage stage :
       {PlanningStage::air_areas_litres, PlanningStage::dates, PlanningStage::fewer_sessions,
        PlanningStage::waits, PlanningStage::fumes, PlanningStage::tins_and_sundries,
        PlanningStage::check})
    words.insert(planning_words({stage, 3}));
  CHECK(words.size() == 7);
  CHECK(words.contains("looking for fewer than 3 sessions"));
}
