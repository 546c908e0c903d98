#include "tackfree/input/follows_reader.hpp"

#include "input/text_checks.hpp"
#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

TEST_CASE("a finishing touch has a title, a wait, a pace and how to do it") {
  Problems problems;
  const auto tree = parse_json(
      "{\"oil\": {\"title\": \"oil\", \"waits_for\": \"stack\", \"on_films_only\": false,\n"
      " \"rate_m2_per_h\": [4, \"practice\"], \"with\": \"oil\", \"how\": [\"Thin.\"]},\n"
      " \"odd\": {\"title\": \"odd\", \"waits_for\": \"Tuesday\", \"on_films_only\": false,\n"
      " \"rate_m2_per_h\": [0, \"practice\"], \"with\": \"oil\", \"how\": [\"Thin.\"]}}",
      "finishing_touches.json", problems);
  REQUIRE(tree);
  JsonCursor file(*tree, "", "finishing_touches.json", problems);
  const auto touches = read_touches(file, SourceNames{});
  REQUIRE(touches.size() == 2);
  CHECK(touches[0].key == "oil");
  CHECK(touches[0].waits_for == Stage::stack);
  CHECK(touches[0].rate.value == square_metres_per_hour(4));
  CHECK(touches[0].how == std::vector<std::string>{"Thin."});
  REQUIRE(problems.size() == 2);
  CHECK(holds(problems[0].key, "waits_for"));
  CHECK(holds(problems[1].key, "rate_m2_per_h"));
}

TEST_CASE("what goes into the wood is waxed, not rubbed out") {
  Job job = testing::sample_job("hardwax_oil");
  job.systems[0].after = "wax";
  Problems problems;
  check_touches(job, problems);
  CHECK(problems.empty());
  job.systems[0].after = "rub_out";
  check_touches(job, problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].key == "systems.after");
  CHECK(holds(problems[0].wanted, "goes into the wood"));
}

}  // namespace
}  // namespace tackfree
