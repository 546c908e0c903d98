#include "tackfree/words/line_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// A line of these dated steps.
WorkLine line_of(const Plan& plan, std::initializer_list<std::size_t> steps) {
  WorkLine line;
  for (const std::size_t step : steps) line.steps.push_back(&plan.schedule.steps.at(step));
  return line;
}

}  // namespace

TEST_CASE("a line that ends in a coat waited for what the coat waited for") {
  Plan plan = small_plan();
  const StepWords words(plan);
  const std::string coat = words.why(plan.schedule.steps.at(1));
  REQUIRE_FALSE(coat.empty());
  CHECK(why_words(line_of(plan, {0, 1}), plan, words, Reasons::binding) == coat);
  CHECK(why_words(line_of(plan, {3}), plan, words, Reasons::binding) ==
        words.why(plan.schedule.steps.at(3)));
}

TEST_CASE("a coat that nothing held has the reason of what is done right before it") {
  Plan plan = small_plan();
  plan.schedule.steps.at(1).held.clear();
  const StepWords words(plan);
  const std::string before = words.why(plan.schedule.steps.at(3));
  REQUIRE_FALSE(before.empty());
  CHECK(why_words(line_of(plan, {3, 1}), plan, words, Reasons::binding) == before);
}

TEST_CASE("set-up and clean-up have no reason, and no coat to put on in time") {
  const Plan plan = small_plan();
  CHECK(why_words(WorkLine{}, plan, StepWords(plan), Reasons::binding).empty());
  CHECK(put_on_by_words(WorkLine{}, plan, Figures(plan.job)).empty());
}
