#include "tackfree/input/shelf_reader.hpp"

#include "tackfree/input/finishing_data_reader.hpp"

#include "input/bench_copy.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

const FinishingData& trade() {
  static const FinishingData data = built_in_finishing_data();
  return data;
}

std::string with_tins(const std::string& tins) {
  return "{\n  \"tackfree_shelf\": 1,\n  \"tins\": [\n" + tins + "\n  ]\n}\n";
}

Shelf good_shelf(const std::string& text) {
  Problems problems;
  auto shelf = parse_shelf(text, "shelf.json", trade(), problems);
  INFO(all_text(problems));
  REQUIRE(shelf);
  return std::move(*shelf);
}

std::string only_problem(const std::string& tins) {
  Problems problems;
  CHECK_FALSE(parse_shelf(with_tins(tins), "shelf.json", trade(), problems));
  INFO(all_text(problems));
  REQUIRE(problems.size() == 1);
  return to_text(problems[0]);
}

}  // namespace

TEST_CASE("a shelf is read with its tins, their ages and what jobs took of them") {
  const Shelf shelf = good_shelf(with_tins(
      R"({ "coating": "satin", "class": "shellac", "volume": "1/2 pt", "opened_on": "2027-02-03",
           "note": "on the left", "left_by": "old-bench", "tin": 2,
           "taken_by": { "new-bench": { "volume": "50 ml", "opened_on": "2027-03-01" } } },
         { "thinner": "mineral spirits", "volume": "750 ml" })"));
  REQUIRE(shelf.tins.size() == 2);
  const SharedTin& satin = shelf.tins[0];
  CHECK(satin.product == "satin");
  CHECK(satin.class_key == "shellac");
  CHECK(satin.volume.volume.in(us_pints) == Approx(0.5));
  CHECK(satin.volume.text == "1/2 pt");
  CHECK(iso_date(satin.opened_on.value()) == "2027-02-03");
  CHECK(satin.note == "on the left");
  CHECK(satin.left_by == "old-bench");
  CHECK(satin.number == 2);
  REQUIRE(satin.takings.size() == 1);
  CHECK(satin.takings[0].job == "new-bench");
  CHECK(satin.takings[0].amount.volume.in(millilitres) == Approx(50));
  CHECK(shelf.tins[1].product == "mineral spirits");
  CHECK(shelf.tins[1].class_key.empty());
  CHECK(shelf.tins[1].line == 7);
}

// 0.8 L of A go with 0.2 L of B at 4 to 1: of 0.8 and 0.1 only 0.4 + 0.1 L can be mixed.
TEST_CASE("of two parts counts what can be mixed of them, and their words stay") {
  const Shelf shelf =
      good_shelf(with_tins(R"({ "coating": "hard", "class": "two_component_polyurethane",
           "part_a": "0.8 L", "part_b": "0.1 L", "a_to_b": 4.0 })"));
  CHECK(shelf.tins.at(0).volume.volume.in(litres) == Approx(0.5));
  CHECK(shelf.tins[0].two_parts.value().a_to_b == "4.0");
}

TEST_CASE("a file that is blank, or has no tins, is an empty shelf") {
  CHECK(good_shelf("").tins.empty());
  CHECK(good_shelf(" \n").tins.empty());
  CHECK(good_shelf("{ \"tackfree_shelf\": 1 }").tins.empty());
  CHECK(good_shelf("{ \"tackfree_shelf\": 1, \"tins\": [] }").tins.empty());
}

TEST_CASE("each mistake in a shelf is named with its line, key, value and what would be right") {
  struct Mistake {
    const char *tin, *text;
  };
  for (
      const Mistake& mistake : {
          Mistake{R"({ "coating": "a", "class": "shelac", "volume": "1 L" })",
                  R"(shelf.json:4: tins[0].class: found "shelac"; wanted a class of coating; )"
                  R"(did you mean "shellac"?)"},
          {R"({ "coating": "a", "volume": "1 L" })",
           "shelf.json:4: tins[0].class: is missing; this key is needed"},
          {R"({ "coating": "a", "class": "shellac" })",
           "shelf.json:4: tins[0].volume: is missing; this key is needed"},
          {R"({ "thinner": "a", "class": "shellac", "volume": "1 L" })",
           R"(shelf.json:4: tins[0].class: found "shellac"; wanted either a thinner, or a coating )"
           "with its class"},
          {R"({ "coating": "a", "class": "shellac", "volume": "1 L", "opened": "2027-01-01" })",
           "shelf.json:4: tins[0].opened: is not a known key"},
          {R"({ "coating": "a", "class": "shellac", "volume": "1 L", "left_by": "A bench",
                 "tin": 1 })",
           R"(shelf.json:4: tins[0].left_by: found "A bench"; wanted the id of a job)"},
          {R"({ "coating": "a", "class": "shellac", "volume": "1 L", "left_by": "b" })",
           "shelf.json:4: tins[0].tin: is missing"},
          {R"({ "coating": "a", "class": "shellac", "volume": "1 L",
                 "taken_by": { "B c": { "volume": "1 L" } } })",
           "shelf.json:5: tins[0].taken_by.B c: found \"an object\"; wanted the id of a job"},
          {R"({ "coating": "a", "class": "shellac", "part_a": "1 L", "part_b": "1 L",
                 "a_to_b": 1 })",
           "shelf.json:4: tins[0].part_a: found \"1 L\"; wanted only of a two-part coating"},
          {R"({ "coating": "a", "class": "conversion_varnish", "part_a": "1 L", "part_b": "1 L",
                 "a_to_b": 0 })",
           "shelf.json:5: tins[0].a_to_b: found \"0\"; wanted a number from 0.01 to 100"},
      }) {
    const std::string text = only_problem(mistake.tin);
    CHECK_MESSAGE(holds(text, mistake.text), text);
  }
}

TEST_CASE("two tins that one job left under one number are refused") {
  const std::string tin =
      R"({ "coating": "a", "class": "shellac", "volume": "1 L", "left_by": "b", "tin": 1 })";
  CHECK(only_problem(tin + ",\n" + tin) ==
        "shelf.json:5: tins[1].tin: found \"1\"; wanted another number: line 4 has it; "
        "delete left_by and tin of the one that is yours");
}

TEST_CASE("a job names the shelf that it shares, which need not be there yet") {
  BenchCopy bench;
  bench.text = replaced(bench.text, "  \"coatings\": [",
                        "  \"shelf_file\": \"../shelf.json\",\n  \"coatings\": [");
  const Job without = bench.read_good();
  REQUIRE(without.shelf);
  CHECK(without.shelf->tins.empty());
  bench.files.put("bench/../shelf.json",
                  with_tins(R"({ "thinner": "mineral spirits", "volume": "1 L" })"));
  const Job with = bench.read_good();
  CHECK(with.shelf->tins.size() == 1);
  bool is_read = false;
  for (const FileRead& read : with.files_read) is_read = is_read || read.what == "the shelf file";
  CHECK(is_read);
  bench.files.put("bench/../shelf.json", "{");
  CHECK(bench.read_bad().at(0).file == "bench/../shelf.json");
}
