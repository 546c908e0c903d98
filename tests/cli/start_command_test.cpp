#include "tackfree/cli/start_command.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("the starter job is written once, has no mistakes, and its plan comes as it stands") {
  const Folder folder;
  const std::string job = starter_in(folder);
  const Said checked = said({"check", job});
  CHECK(checked.code == exit_done);
  CHECK(checked.err.empty());
  CHECK(said({"plan", job}).code == exit_done);
  const std::string before = text_of(job);
  const Said again = said({"start", folder.in("mine")});
  CHECK(again.code == exit_wrong_input);
  CHECK(again.err.find("nothing is overwritten") != std::string::npos);
  CHECK(text_of(job) == before);
}

}  // namespace tackfree::testing
