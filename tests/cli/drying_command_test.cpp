#include "tackfree/cli/drying_command.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("a coat at one hour comes as text and as JSON") {
  const Folder folder;
  const std::string json = folder.in("drying.json");
  const Said told = said({"drying", TACKFREE_ROOT "/data/demo/hall_bench/hall_bench.json",
                          "--coating", "oil varnish", "--json", json});
  CHECK(told.code == exit_done);
  CHECK_FALSE(told.out.empty());
  CHECK(text_of(json).starts_with("{\n  \"tackfree_drying\": 1,"));
}

}  // namespace tackfree::testing
