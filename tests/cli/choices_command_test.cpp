#include "tackfree/cli/choices_command.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("choices between dates and sessions come as a table and as JSON") {
  const Folder folder;
  const std::string json = folder.in("choices.json");
  const Said told = said({"choices", starter_in(folder), "--json", json});
  CHECK(told.code == exit_done);
  CHECK(told.out.find("SOONER, OR IN FEWER SESSIONS") != std::string::npos);
  CHECK(text_of(json).find("\"tackfree_choices\": 1") != std::string::npos);
  CHECK(said({"choices", folder.in("none.json")}).code == exit_wrong_input);
}

}  // namespace tackfree::testing
