#include "tackfree/cli/asked_plan.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("only a plan that is asked for proposed airing goes by what its own plan proposes") {
  const Folder folder;
  const std::string job = TACKFREE_ROOT "/tests/transcripts/jobs/closed_garage.json";
  const auto airing = [&](const char* word) {
    return said({"plan", job, "--keep", "no", "--airing", word}).out;
  };
  CHECK(airing("given") != airing("proposed"));
}

}  // namespace tackfree::testing
