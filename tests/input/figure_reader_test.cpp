#include "tackfree/input/figure_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const SourceNames sources{{{"book", "A Handbook, p. 3"}}};

JsonNode parsed(const std::string& text) {
  Problems problems;
  auto tree = parse_json(text, "x.json", problems);
  REQUIRE(tree);
  return std::move(*tree);
}

}  // namespace

TEST_CASE("a figure of the finishing data brings its origin and the full name of its source") {
  const JsonNode tree = parsed(R"({"a_h": [2, "published", "book"], "b_h": [3, "practice"]})");
  Problems problems;
  JsonCursor object(tree, "", "x.json", problems);
  FigureReader figures(object, sources);
  Sourced<Duration> a, b, missing;
  figures.read(a, "a_h", {0, 10, "h"}, hours);
  figures.read(b, "b_h", {0, 10, "h"}, hours);
  CHECK(a.value == hours(2));
  CHECK(a.origin == Origin::published);
  CHECK(a.source == "A Handbook, p. 3");
  CHECK(b.origin == Origin::practice);
  CHECK(b.source.empty());
  CHECK(problems.empty());
  figures.read(missing, "c_h", {0, 10, "h"}, hours);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].key == "c_h");
}

TEST_CASE("a figure of a job is bare, takes the origin of its object, and may be missing") {
  const JsonNode tree = parsed(R"({"a_h": 2, "b_h": [3, "practice"], "p": 180, "q": [180, 120]})");
  Problems problems;
  JsonCursor object(tree, "", "x.json", problems);
  FigureReader figures(object, Origin::measured);
  Sourced<Duration> a, b{hours(1), Origin::practice, {}};
  CHECK(figures.read(a, "a_h", {0, 10, "h"}, hours));
  CHECK(a.origin == Origin::measured);
  CHECK_FALSE(figures.read(b, "none_h", {0, 10, "h"}, hours));
  CHECK(problems.empty());
  CHECK_FALSE(figures.read(b, "b_h", {0, 10, "h"}, hours));
  CHECK(b.value == hours(1));
  std::optional<Sourced<Grit>> grit;
  figures.read(grit, "p");
  CHECK(grit->value == Grit{180});
  Sourced<std::vector<Grit>> grits;
  figures.read(grits, "q");
  CHECK(grits.value.empty());
  REQUIRE(problems.size() == 2);
  CHECK(problems[0].wanted == "wanted a number of h from 0 to 10");
  CHECK(holds(problems[1].wanted, "from coarse to fine"));
}

TEST_CASE("a temperature is read in Celsius or Fahrenheit, its range holds in both") {
  const JsonNode tree = parsed(R"({"a_c": 20, "b_f": 68, "c_f": 213, "d_c": 1, "d_f": 34})");
  Problems problems;
  JsonCursor object(tree, "", "x.json", problems);
  CHECK(read_temperature(object, "a", {0, 100}) == celsius(20));
  CHECK(read_temperature(object, "b", {0, 100})->in_celsius() == doctest::Approx(20));
  CHECK(problems.empty());
  CHECK_FALSE(read_temperature(object, "c", {0, 100}));
  CHECK_FALSE(read_temperature(object, "d", {0, 100}));
  CHECK_FALSE(read_temperature(object, needed("e"), {0, 100}));
  REQUIRE(problems.size() == 3);
  CHECK(problems[0].wanted == "wanted a number of F from 32 to 212");
  CHECK(problems[1].wanted == "wanted either d_c or d_f, not both");
  CHECK(problems[2].key == "e_c");
}

TEST_CASE("usual sizes are volumes with their unit, each one readable, with one origin for all") {
  const JsonNode tree = parsed(
      R"({"good": [["1/2 pt", "1 gal"], "practice"], "bad": [["1 qt", "2"], "practice"],
          "none": [[], "practice"]})");
  Problems problems;
  JsonCursor object(tree, "", "x.json", problems);
  FigureReader figures(object, sources);
  Sourced<std::vector<TinSize>> good, bad, none;
  figures.read(good, "good");
  CHECK(problems.empty());
  REQUIRE(good.value.size() == 2);
  CHECK(good.value[0].label == "1/2 pt");
  CHECK(good.value[1].volume == us_gallons(1));
  CHECK(good.origin == Origin::practice);
  figures.read(bad, "bad");
  figures.read(none, "none");
  CHECK(problems.size() == 2);
  CHECK(bad.value.empty());
}
