#include "tackfree/input/label_rows_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Coating read_label(const std::string& rows, Problems& problems) {
  const auto tree = parse_json("{\"at_temperatures\": [" + rows + "]}", "job.json", problems);
  REQUIRE(tree);
  JsonCursor cursor(*tree, "label", "job.json", problems);
  Coating coating;
  StagesGiven given{};
  read_label_rows(cursor, coating, given);
  CHECK(given[index_of(Stage::recoat)] == !coating.label_points[index_of(Stage::recoat)].empty());
  return coating;
}

}  // namespace

TEST_CASE(
    "rows of a label are put in order and the nearest to the label's own temperature counts") {
  Problems problems;
  const Coating found = read_label(
      R"({"temp_c": 30, "recoat_after_h": 1}, {"temp_f": 50, "recoat_after_h": 4, "full_cure_after_d": 14},
         {"temp_c": 20, "recoat_after_h": 2, "full_cure_after_d": 7})",
      problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  const auto& points = found.label_points[index_of(Stage::recoat)];
  REQUIRE(points.size() == 3);
  CHECK(points[0].at.in_celsius() == doctest::Approx(10));
  CHECK(points[2].after == hours(1));
  CHECK(found.label_after[index_of(Stage::recoat)]->value == hours(2));
  CHECK(found.label_after[index_of(Stage::recoat)]->origin == Origin::label);
  CHECK(found.label_points[index_of(Stage::full_cure)][0].after == days(14));
}

TEST_CASE("hours that fall with falling temperature are named at their row") {
  Problems problems;
  read_label("{\"temp_c\": 10, \"recoat_after_h\": 2},\n{\"temp_c\": 20, \"recoat_after_h\": 4}",
             problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 1);
  CHECK(holds(problems[0].wanted, "no fewer hours at 10 C than at 20 C"));
  CHECK(holds(problems[0].hint, "exchanged"));
}

TEST_CASE("a temperature twice and a row alone are named") {
  Problems problems;
  read_label("{\"temp_c\": 10, \"recoat_after_h\": 4},\n{\"temp_c\": 10, \"recoat_after_h\": 4}",
             problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 2);
  problems.clear();
  read_label("{\"temp_c\": 10, \"recoat_after_h\": 4}", problems);
  REQUIRE(problems.size() == 1);
  CHECK(holds(problems[0].wanted, "at least two rows"));
}
