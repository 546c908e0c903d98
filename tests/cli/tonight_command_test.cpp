#include "tackfree/cli/tonight_command.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("a reading on the command line counts for tonight, and is not written down") {
  const Folder folder;
  const std::string job = starter_in(folder);
  const std::string monday = "2027-04-05T17:45";
  const Said cold =
      said({"tonight", job, "--now", monday, "--air-temp-c", "2", "--humidity-pct", "60"});
  CHECK(cold.out != said({"tonight", job, "--now", monday}).out);
  CHECK_FALSE(fs::exists(folder.in("mine/job.log.jsonl")));
  CHECK(said({"tonight", frozen_job}).code == exit_not_plannable);
}

}  // namespace tackfree::testing
