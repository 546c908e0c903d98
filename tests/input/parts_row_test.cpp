#include "tackfree/input/parts_row.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("columns are found by name whatever unit their head names, in any order") {
  Problems problems;
  const CsvDocument document{
      ',', {"batch", "Length (mm)", "Part", "KIND", "note", "coat", "Area [m\u00B2]"}, {}};
  const auto columns = PartsColumns::in(document, "p.csv", problems);
  REQUIRE(columns);
  CHECK(columns->find("length")->place == 1);
  CHECK(columns->find("length")->unit->si_per_unit() == 0.001);
  CHECK(columns->find("kind")->place == 3);
  CHECK_FALSE(columns->find("kind")->unit);
  CHECK(columns->find("area")->area_unit->si_per_unit() == 1.0);
  CHECK_FALSE(columns->decimal_comma());
  CHECK(columns->find("width") == nullptr);
}

TEST_CASE("a field that was filled and not asked for is refused, a note is not") {
  Problems problems;
  const CsvDocument document{',',
                             {"kind", "part", "length", "batch", "depth", "note", "coat"},
                             {{2, {"board", "x", "1 m", "b", "2 mm", "mine", ""}}}};
  const auto columns = PartsColumns::in(document, "p.csv", problems);
  REQUIRE(columns);
  PartsRow row(document.rows[0], *columns, "p.csv", problems);
  CHECK(row.text("kind") == "board");
  CHECK(row.text("part") == "x");
  CHECK(row.needed_length("length") == metres(1));
  CHECK(row.text("batch") == "b");
  CHECK(row.quantity() == 1);
  CHECK(row.good());
  row.refuse_unused("board");
  CHECK_FALSE(row.good());
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 2);
  CHECK(problems[0].key == "depth");
  CHECK(problems[0].found == "2 mm");
}

TEST_CASE("a length in square metres and an area in millimetres are no columns") {
  Problems problems;
  const CsvDocument document{',', {"kind", "part", "coat", "batch", "length_m2", "area_mm"}, {}};
  CHECK_FALSE(PartsColumns::in(document, "p.csv", problems));
  REQUIRE(problems.size() == 2);
  CHECK(problems[0].key == "length_m2");
  CHECK(problems[1].key == "area_mm");
}
