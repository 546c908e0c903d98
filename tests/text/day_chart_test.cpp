#include "tackfree/text/day_chart.hpp"

#include "tackfree/text/text_page.hpp"
#include "tackfree/words/display_text.hpp"

#include <sstream>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::vector<std::string> chart_of(const Plan& plan, int columns) {
  TextPage page(columns);
  write_text_chart(page, plan, StepWords(plan));
  std::istringstream in(page.text());
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::string line_of(const std::vector<std::string>& lines, const std::string& name, int nth = 0) {
  for (const std::string& line : lines)
    if (line.starts_with(name) && nth-- == 0) return line;
  return {};
}

}  // namespace

TEST_CASE("each batch has a line of bars at midnights, with work and waits between them") {
  const auto lines = chart_of(small_plan(), 80);
  // Friday evening: sanding at 17:00; Saturday morning sanding and the coat; then it dries.
  const std::string seat = line_of(lines, "seat");
  CHECK(seat == "seat           |     #..|...#~~~~|");
  CHECK(line_of(lines, "seat", 1).starts_with("seat           |...#    |"));
  for (const std::string& line : lines) CHECK(display_width(line) <= 80);
}

TEST_CASE("a wider page gives two hours a character") {
  const std::string seat = line_of(chart_of(small_plan(), 120), "seat");
  CHECK(display_width(seat) == 15 + 1 + 2 * 13);
}

TEST_CASE("wide and combining characters in a name leave the bars where they are") {
  SmallNames names;
  names.batch = "\u6728\u6750e\u0301";
  const std::string seat = line_of(chart_of(small_plan(names), 80), names.batch);
  CHECK(display_width(seat.substr(0, seat.find('|'))) == 15);
}

TEST_CASE("there is no chart of nothing, and none on a page narrower than a week") {
  Plan plan = small_plan();
  CHECK(chart_of(plan, 70).empty());
  plan.schedule.steps.clear();
  CHECK(chart_of(plan, 80).empty());
}
