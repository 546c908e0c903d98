#include "tackfree/cli/problem_list.hpp"

#include <algorithm>
#include <sstream>
#include <string>

#include <doctest/doctest.h>

namespace tackfree {
namespace {

std::string printed(Problems problems) {
  std::ostringstream out;
  print_problems(std::move(problems), out);
  return out.str();
}

Problem wrong_number(int line, const std::string& key, const std::string& found) {
  return {
      .file = "rows.csv", .line = line, .key = key, .found = found, .wanted = "wanted a number"};
}

TEST_CASE("problems are listed file by file in the order they were named, each from its top") {
  CHECK(printed({{.file = "b", .line = 9, .wanted = "1"},
                 {.file = "a", .line = 2, .wanted = "2"},
                 {.file = "b", .line = 3, .wanted = "3"}}) == "b:3: 3\nb:9: 1\na:2: 2\n");
}

TEST_CASE("three thousand mistakes of one kind are one message with a count and three places") {
  Problems problems;
  for (int line = 2; line < 3002; ++line)
    problems.push_back(wrong_number(line, "temp_c", "n/a" + std::to_string(line % 7)));
  problems.push_back(wrong_number(40, "humidity_pct", "x"));
  const std::string text = printed(problems);
  CHECK(text ==
        "rows.csv:2: temp_c: found \"n/a2\"; wanted a number; 3000 mistakes of this kind, the "
        "first: line 2, line 3, line 4\n"
        "rows.csv:40: humidity_pct: found \"x\"; wanted a number\n");
}

TEST_CASE("ten mistakes of a kind are told one by one, and so are any number of different ones") {
  Problems ten, different;
  for (int i = 0; i < 10; ++i) ten.push_back(wrong_number(i + 1, "temp_c", "n/a"));
  for (int i = 0; i < 50; ++i)
    different.push_back(wrong_number(i + 1, "key" + std::to_string(i), "n/a"));
  const auto lines = [](const std::string& text) {
    return std::count(text.begin(), text.end(), '\n');
  };
  CHECK(lines(printed(ten)) == 10);
  CHECK(lines(printed(different)) == 50);
}

TEST_CASE("entries of one list are of one kind, told by their keys where lines are not known") {
  Problems problems;
  for (int i = 0; i < 20; ++i)
    problems.push_back(wrong_number(0, "days[" + std::to_string(i) + "].low_c", "x"));
  const std::string text = printed(problems);
  CHECK(text.find("20 mistakes of this kind, the first: days[0].low_c, days[1].low_c, "
                  "days[2].low_c") != std::string::npos);
  CHECK(std::count(text.begin(), text.end(), '\n') == 1);
}

}  // namespace
}  // namespace tackfree
