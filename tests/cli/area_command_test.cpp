#include "tackfree/cli/area_command.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("the areas of a job come as text and as JSON, also where it cannot be dated") {
  const Folder folder;
  const std::string json = folder.in("area.json");
  const Said area = said({"area", starter_in(folder), "--json", json});
  CHECK(area.code == exit_done);
  CHECK(area.out.find("AREAS TO COAT") != std::string::npos);
  CHECK(text_of(json).find("\"tackfree_area\": 1") != std::string::npos);
  CHECK(said({"area", frozen_job}).code == exit_done);
}

}  // namespace tackfree::testing
