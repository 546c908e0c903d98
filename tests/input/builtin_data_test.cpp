#include "tackfree/input/builtin_data.hpp"

#include "input/bench_copy.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("the built-in files are the files of data, byte by byte") {
  for (const char* name :
       {"coatings.json", "how.json", "sources.json", "starter/job.json", "starter/parts.csv"}) {
    CAPTURE(name);
    Problems problems;
    CHECK(built_in_files().text(std::filesystem::path("data") / name, problems) ==
          file_text(root / "data" / name));
  }
  Problems missing;
  CHECK_FALSE(built_in_files().text("data/none.json", missing));
  CHECK_FALSE(built_in_files().text("data/demo/hall_bench/hall_bench.json", missing));
  CHECK(missing.size() == 2);
}
