#include "tackfree/syntax/json_document.hpp"

#include <random>

#include "effort.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// The one problem that reading `text` gives.
Problem only_json_problem(const std::string& text) {
  Problems problems;
  CHECK_FALSE(parse_json(text, "x.json", problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "x.json");
  return problems[0];
}

std::string random_bytes(std::size_t size) {
  std::mt19937 generator(1);
  std::string bytes(size, ' ');
  for (char& byte : bytes) byte = static_cast<char>(generator() & 0xFFU);
  return bytes;
}

}  // namespace

TEST_CASE("every value knows its line, a number at the end of a line too") {
  Problems problems;
  const auto tree = parse_json(
      "{\n \"a\": 1\n,\n \"b\":\n 2.50\n, \"c\": [\n3,\n\"x\",\r\nnull],\n"
      "\"d\": true,\n\"e\": 7}",
      "x.json", problems);
  REQUIRE(tree);
  CHECK(problems.empty());
  CHECK(tree->line == 1);
  CHECK(tree->member("a")->line == 2);
  CHECK(tree->member("b")->line == 5);
  CHECK(tree->member("b")->text == "2.50");
  CHECK(tree->member("c")->line == 6);
  CHECK(tree->member("c")->items[0].line == 7);
  CHECK(tree->member("c")->items[1].line == 8);
  CHECK(tree->member("c")->items[2].line == 9);
  CHECK(tree->member("d")->line == 10);
  CHECK(tree->member("d")->boolean);
  CHECK(tree->member("e")->line == 11);
  CHECK(tree->member("f") == nullptr);
}

TEST_CASE("a byte-order mark before the text does no harm") {
  Problems problems;
  CHECK(parse_json("\xEF\xBB\xBF{\"a\": 1}", "x.json", problems));
}

TEST_CASE("text that is not JSON is one problem with its line") {
  const Problem problem = only_json_problem("{\n \"a\": 1,\n \"b\": oops\n}");
  CHECK(problem.line == 3);
  CHECK(problem.wanted.find("wanted JSON text here") != std::string::npos);
  CHECK(only_json_problem("{\"a\": 1").line == 1);
  CHECK(only_json_problem(" \n ").wanted.find("is empty") != std::string::npos);
  CHECK(only_json_problem("{\"a\": NaN}").wanted.find("wanted JSON text") != std::string::npos);
  CHECK(only_json_problem("{} {}").wanted.find("wanted JSON text") != std::string::npos);
}

TEST_CASE("a number beyond what a computer holds is refused by name") {
  const Problem problem = only_json_problem("{\n\"a\": 1e400\n}");
  CHECK(problem.line == 2);
  CHECK(problem.found == "1e400");
  CHECK(problem.wanted.find("at most 1.8e308") != std::string::npos);
}

TEST_CASE("a key that stands twice in an object is refused with both lines") {
  const Problem problem = only_json_problem("{\n\"a\": 1,\n\"b\": {\"a\": 3},\n\"a\": 2}");
  CHECK(problem.line == 4);
  CHECK(problem.key == "a");
  CHECK(problem.hint == "it is also on line 2");
}

TEST_CASE("ten megabytes of rubbish are one problem") {
  const auto size = testing::cases<std::size_t>(10'000'000);
  only_json_problem(random_bytes(size));
  only_json_problem(std::string(size, '['));
  only_json_problem(std::string(size, 'x'));
  only_json_problem("\"" + std::string(size, 'x'));
  std::string many = "[1";
  for (std::size_t i = 0; i < size / 2; ++i) many += ",1";
  CHECK(only_json_problem(many + "]").wanted.find("200000 values") != std::string::npos);
  std::string repeated = "{\"a\":1";
  for (int i = 0; i < 100'000; ++i) repeated += ",\"a\":1";
  Problems problems;
  CHECK_FALSE(parse_json(repeated + "}", "x.json", problems));
  CHECK(problems.size() == 20);
}

TEST_CASE("nesting is read to 64 levels and no deeper") {
  Problems problems;
  CHECK(parse_json(std::string(64, '[') + std::string(64, ']'), "x.json", problems));
  CHECK(only_json_problem(std::string(65, '[') + std::string(65, ']')).wanted ==
        "wanted at most 64 levels of nesting");
}
