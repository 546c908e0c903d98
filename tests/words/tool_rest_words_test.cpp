#include "tackfree/words/tool_rest_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

ToolRest rest_of(Tool tool, bool wrapped) {
  return {.dated_step = 1,
          .pause = {at("2027-04-10T14:40:00Z"), at("2027-04-10T16:40:00Z")},
          .tool = tool,
          .wrapped = wrapped,
          .cleaning = {}};
}

}  // namespace

TEST_CASE("a tool that rests is wrapped or cleaned, and a cloth is not used again") {
  CHECK(tool_rest_words(rest_of(Tool::brush, true)) ==
        "Wrap the brush airtight: its next coat is 2.0 h off, and it would dry.");
  CHECK(tool_rest_words(rest_of(Tool::gun, false)) ==
        "Clean the gun now: its next coat is 2.0 h off, and what is left in it thickens.");
  CHECK(tool_rest_words(rest_of(Tool::roller, false)) ==
        "Clean the roller now, and take a new sleeve then: its next coat is 2.0 h off, and it "
        "would harden.");
  CHECK(tool_rest_words(rest_of(Tool::cloth, false))
            .starts_with("Take a new cloth for the next coat, 2.0 h from now"));
}
