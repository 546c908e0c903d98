#include "tackfree/cli/exit_code.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("a plan with a step that found no time is not plannable, any other is done") {
  const Folder folder;
  CHECK(said({"plan", starter_in(folder), "--keep", "no"}).code == exit_done);
  CHECK(said({"plan", frozen_job, "--keep", "no"}).code == exit_not_plannable);
}

}  // namespace tackfree::testing
