#include "tackfree/syntax/json_cursor.hpp"

#include <array>

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("one pass over an object finds every mistake, each with its path, line and remedy") {
  Problems problems;
  const auto tree = parse_json(
      "{\n\"name\": 3,\n\"size\": \"5\",\n\"count\": 2.5,\n\"on\": \"yes\","
      "\n\"wear\": \"hrad\",\n\"list\": [{}, 4],\n\"nmae\": \"x\"\n}",
      "x.json", problems);
  REQUIRE(tree);
  constexpr std::array<std::string_view, 2> wears{"light", "hard"};
  JsonCursor cursor(*tree, "tins[0]", "x.json", problems);
  CHECK_FALSE(cursor.text(needed("name")));
  CHECK_FALSE(cursor.number("size", {1, 10, "mm"}));
  CHECK_FALSE(cursor.whole("count", {1, 10}));
  CHECK_FALSE(cursor.flag("on"));
  CHECK_FALSE(cursor.word("wear", wears));
  CHECK(cursor.objects("list").size() == 1);
  CHECK_FALSE(cursor.text(needed("title")));
  cursor.refuse_unknown();

  REQUIRE(problems.size() == 8);
  CHECK(to_text(problems[0]) ==
        "x.json:2: tins[0].name: found \"3\"; wanted text in quotes, not empty");
  CHECK(to_text(problems[1]) ==
        "x.json:3: tins[0].size: found \"5\"; wanted a number of mm from 1 to 10; without quotes");
  CHECK(to_text(problems[2]) ==
        "x.json:4: tins[0].count: found \"2.5\"; wanted a whole number from 1 to 10");
  CHECK(to_text(problems[3]) ==
        "x.json:5: tins[0].on: found \"yes\"; wanted true or false, without quotes");
  CHECK(to_text(problems[4]) ==
        "x.json:6: tins[0].wear: found \"hrad\"; wanted one of \"light\", "
        "\"hard\"; did you mean \"hard\"?");
  CHECK(to_text(problems[5]) ==
        "x.json:7: tins[0].list[1]: found \"4\"; wanted an object, { ... }");
  CHECK(to_text(problems[6]) == "x.json:1: tins[0].title: is missing; this key is needed");
  CHECK(to_text(problems[7]) ==
        "x.json:8: tins[0].nmae: is not a known key; wanted a known one; "
        "did you mean \"name\"?");
}

TEST_CASE("a range holds both of its ends and nothing beyond") {
  Problems problems;
  const auto tree =
      parse_json(R"({"a": 1, "b": 10, "c": 0.999, "d": 10.001, "e": -1})", "x.json", problems);
  JsonCursor cursor(*tree, "", "x.json", problems);
  CHECK(cursor.number("a", {1, 10}) == 1.0);
  CHECK(cursor.number("b", {1, 10}) == 10.0);
  CHECK_FALSE(cursor.number("c", {1, 10}));
  CHECK_FALSE(cursor.number("d", {1, 10}));
  CHECK_FALSE(cursor.number("e", {.least = 0}));
  REQUIRE(problems.size() == 3);
  CHECK(problems[2].wanted == "wanted a number, 0 or more");
}
