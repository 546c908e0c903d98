#include "tackfree/cli/asked_job.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("a data folder in place of the built-in data must be whole") {
  const Folder folder;
  const std::string job = starter_in(folder);
  CHECK(said({"check", job, "--data", TACKFREE_ROOT "/data"}).code == exit_done);
  const Said missing = said({"check", job, "--data", folder.path.string()});
  CHECK(missing.code == exit_wrong_input);
  CHECK(missing.err.find("coatings.json") != std::string::npos);
}

TEST_CASE("all that the command line has wrong about a job is told in one run") {
  const Folder folder;
  const Said drying =
      said({"drying", starter_in(folder), "--coating", "gravy", "--now", "noon", "--at", "dusk"});
  CHECK(drying.code == exit_wrong_input);
  CHECK(drying.out.empty());
  for (const char* option : {"--now", "--at", "--coating"})
    CHECK(drying.err.find(option) != std::string::npos);
  CHECK(drying.err.find("3 mistakes found") != std::string::npos);
}

}  // namespace tackfree::testing
