#include "tackfree/export/csv.hpp"

#include <algorithm>
#include <sstream>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// Rows by RFC 4180, read without the writer's code.
std::vector<std::vector<std::string>> rows_of(const std::string& csv) {
  std::vector<std::vector<std::string>> rows(1, {""});
  bool quoted = false;
  for (std::size_t i = 0; i < csv.size(); ++i) {
    const char c = csv[i];
    if (c == '"' && quoted && i + 1 < csv.size() && csv[i + 1] == '"') {
      rows.back().back() += '"';
      ++i;
    } else if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      rows.back().emplace_back();
    } else if (c == '\r' && !quoted) {
      REQUIRE(csv.at(++i) == '\n');
      rows.push_back({""});
    } else {
      rows.back().back() += c;
    }
  }
  rows.pop_back();
  return rows;
}

void check_rectangular(const std::string& csv) {
  const auto rows = rows_of(csv);
  REQUIRE(rows.size() > 1);
  for (const auto& row : rows) CHECK(row.size() == rows.front().size());
}

}  // namespace

TEST_CASE("text that a spreadsheet would calculate has an apostrophe before it") {
  // Source of the signs: OWASP, CSV injection (from memory).
  for (const char* sign : {"=", "+", "-", "@", "\uFF1D"}) {
    const std::string formula = std::string(sign) + "HYPERLINK(1)";
    CHECK(csv_text(formula) == "'" + formula);
    CHECK(csv_text("\t" + formula).starts_with("\"' "));
    CHECK(csv_text("\r" + formula).starts_with("\"' "));
  }
  CHECK(csv_text("P120-180") == "P120-180");
}

TEST_CASE("commas, quotes and blanks put a field in quotes, and quotes are doubled") {
  CHECK(csv_text("a,b") == "\"a,b\"");
  CHECK(csv_text("1/2\" board") == "\"1/2\"\" board\"");
  CHECK(csv_text("a\nb") == "\"a b\"");
}

TEST_CASE("every row has as many fields as the head, whatever the names are") {
  const std::string hostile = "=1+1,\"" + hostile_name();
  for (const Plan& plan : {small_plan(), small_plan({hostile, hostile, hostile, hostile})}) {
    check_rectangular(steps_csv(plan));
    check_rectangular(areas_csv(plan));
    check_rectangular(shopping_csv(plan));
  }
}

TEST_CASE("no field of a person's words can be a formula") {
  const std::string formula = "=cmd()";
  const Plan plan = small_plan({formula, formula, formula, formula});
  for (const std::string& csv : {steps_csv(plan), areas_csv(plan), shopping_csv(plan)})
    for (const auto& row : rows_of(csv))
      for (const std::string& field : row) CHECK_FALSE(field.starts_with('='));
}

TEST_CASE("steps are pieces of work in order of time, set-up and clean-up with them") {
  const auto rows = rows_of(steps_csv(small_plan()));
  REQUIRE(rows.size() == 8);
  CHECK(rows[1][0] == "2027-04-09 17:00");
  CHECK(rows[1][2] == "15");
  CHECK(rows[1][3] == "seat");
  CHECK(rows[1][7] == "120");
  CHECK(rows[3][4] == "set up: varnish, brush");
  CHECK(rows[4][9] == "110");
}

TEST_CASE("areas and shopping say their units in the head") {
  const auto areas = rows_of(areas_csv(small_plan()));
  CHECK(areas[1] == std::vector<std::string>{"seat board", "1", "seat", "top", "show", "face",
                                             "0.5000", "5.382"});
  const auto shopping = rows_of(shopping_csv(small_plan()));
  CHECK(shopping[1][0] == "varnish");
  CHECK(shopping[1][1] == "1 x 1 qt");
  CHECK(shopping[1][3] == "200");
  CHECK(shopping[1][13] == "24.00");
  CHECK(shopping.back()[0] == "abrasive sheet or disc, P120");
}
