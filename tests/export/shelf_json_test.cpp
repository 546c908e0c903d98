#include "tackfree/export/shelf_json.hpp"

#include "tackfree/input/finishing_data_reader.hpp"
#include "tackfree/input/shelf_reader.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Shelf read_shelf_text(const std::string& text) {
  Problems problems;
  auto shelf = parse_shelf(text, "shelf.json", built_in_finishing_data(), problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  REQUIRE(shelf);
  return std::move(*shelf);
}

}  // namespace

TEST_CASE("a shelf that is read and written again is the same to the last byte") {
  const std::string text =
      "{\n"
      "  \"$schema\": \"shelf.schema.json\",\n"
      "  \"tackfree_shelf\": 1,\n"
      "  \"tins\": [\n"
      "    { \"coating\": \"satin \\\"b\\\"\", \"class\": \"shellac\", \"volume\": \"1/2 pt\", "
      "\"opened_on\": \"2027-02-03\", \"note\": \"on the left\" },\n"
      "    { \"coating\": \"hard\", \"class\": \"conversion_varnish\", \"part_a\": \"0.8 L\", "
      "\"part_b\": \"80 ml\", \"a_to_b\": 10.0, \"left_by\": \"a-b\", \"tin\": 2 },\n"
      "    { \"thinner\": \"mineral spirits\", \"volume\": \"750 ml\", "
      "\"taken_by\": { \"a-b\": { \"volume\": \"50 ml\", \"opened_on\": \"2027-03-01\" }, "
      "\"c\": { \"opened_on\": \"2027-03-01\" } } }\n"
      "  ]\n"
      "}\n";
  CHECK(shelf_json(read_shelf_text(text), UnitSystem::us) == text);
  const std::string empty = "{\n  \"tackfree_shelf\": 1,\n  \"tins\": []\n}\n";
  CHECK(shelf_json({}, UnitSystem::metric) == empty);
}

TEST_CASE("new amounts are in the job's units: in a tin rounded down, taken rounded up") {
  Shelf shelf;
  SharedTin tin{.product = "satin", .class_key = "shellac", .volume = {litres(0.6437), {}}};
  tin.takings = {{"a", {litres(0.1002), {}}, {}}};
  shelf.tins = {tin};
  const std::string metric = shelf_json(shelf, UnitSystem::metric);
  CHECK(metric.find("\"volume\": \"0.643 L\"") != std::string::npos);
  CHECK(metric.find("\"volume\": \"0.101 L\"") != std::string::npos);
  const std::string us = shelf_json(shelf, UnitSystem::us);
  CHECK(us.find("\"volume\": \"21.7 fl oz\"") != std::string::npos);  // 21.77
  CHECK(us.find("\"volume\": \"3.4 fl oz\"") != std::string::npos);   // 3.39
  // The least that is written can be read.
  shelf.tins[0].volume.volume = millilitres(1);
  shelf.tins[0].takings.clear();
  for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric})
    CHECK(read_shelf_text(shelf_json(shelf, units)).tins.at(0).volume.volume.in(millilitres) ==
          doctest::Approx(1));
}
