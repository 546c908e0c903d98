#include "tackfree/words/consequence_words.hpp"

#include <set>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("each work too soon has a sentence of its own") {
  const Plan plan = small_plan();
  std::set<std::string> sentences;
  for (const TooSoon each : {TooSoon::turned, TooSoon::sanded, TooSoon::hardware_fitted,
                             TooSoon::repaired, TooSoon::coated})
    sentences.insert(consequence_words(each, plan));
  CHECK(sentences.size() == 5);
  CHECK(sentences.contains(
      "A film that is not dry to sand rolls up under the paper, clogs it and tears."));
}

TEST_CASE("dust names the coat that took it, an amount how far off it is, air its rule") {
  const Plan plan = small_plan();
  CHECK(consequence_words(DustInCoat{1}, plan) ==
        "Coat 1 (back) of seat was still wet beside it: look for dust in it before the next coat.");
  CHECK(consequence_words(FarFromExpected{9.87}, plan)
            .starts_with("That is 9.9 times what was expected of this coat."));
  CHECK(consequence_words(CoatedInUnfitAir{Gate::too_cold}, plan)
            .starts_with("The air was too cold"));
  CHECK(consequence_words(RepairAdvice{"Sand the run flat."}, plan) == "Sand the run flat.");
  CHECK(consequence_words(RepairAdvice{}, plan).find("Ask its maker") != std::string::npos);
}
