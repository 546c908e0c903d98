#include "tackfree/input/builtin_data.hpp"

#include "input/bench_copy.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("the built-in files are the files of data, byte by byte") {
  for (const char* name :
       {"coatings.json", "how.json", "sources.json", "starter/job.json", "starter/parts.csv"}) {
    CAPTURE(name);
    CHECK(builtin_data(name) == file_text(root / "data" / name));
  }
  CHECK_FALSE(builtin_data("none.json"));
  CHECK_FALSE(builtin_data("demo/hall_bench/hall_bench.json"));
}
