#include "tackfree/syntax/csv_document.hpp"

#include <random>

#include "effort.hpp"
#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace tackfree;

namespace {

Problem only_csv_problem(const std::string& text) {
  Problems problems;
  CHECK_FALSE(parse_csv(text, "x.csv", problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "x.csv");
  return problems[0];
}

}  // namespace

TEST_CASE("quoted fields hold commas, quotes and line ends, and lines are counted through them") {
  Problems problems;
  const auto document = parse_csv(
      "\xEF\xBB\xBF"
      "a,b,c\r\n"
      "1,\"x, y\",\"say \"\"so\"\"\"\r\n"
      "\r\n"
      ",,\r\n"
      "2,\"two\nlines\r\nor three\", z \n"
      "3,4'2.5\",",
      "x.csv", problems);
  REQUIRE(document);
  CHECK(problems.empty());
  CHECK(document->head == std::vector<std::string>{"a", "b", "c"});
  REQUIRE(document->rows.size() == 3);
  CHECK(document->rows[0].fields == std::vector<std::string>{"1", "x, y", "say \"so\""});
  CHECK(document->rows[0].line == 2);
  CHECK(document->rows[1].fields == std::vector<std::string>{"2", "two\nlines\r\nor three", "z"});
  CHECK(document->rows[1].line == 5);
  CHECK(document->rows[2].fields == std::vector<std::string>{"3", "4'2.5\"", ""});
  CHECK(document->rows[2].line == 8);
  CHECK(document->column("c") == 2);
  CHECK_FALSE(document->column("d"));
}

TEST_CASE("the separator is the one that the heads are parted by") {
  struct Row {
    const char* text;
    char separator;
  };
  const Row rows[] = {{"a,b;c,d\n1,2,3\n", ','},
                      {"a;b,c;d\n1;2;3\n", ';'},
                      {"a\tb,c\td\n1\t\" 2\" \t3\n", '\t'},
                      {"\"a,b,c,d\";e\n1;2\n", ';'},
                      {"\n\r\na;b\n1,5;2\n", ';'},
                      {"a\n1;2\n", ','}};
  for (const Row& row : rows) {
    INFO(std::string(row.text));
    Problems problems;
    const auto document = parse_csv(row.text, "x.csv", problems);
    REQUIRE(document);
    CHECK(problems.empty());
    CHECK(document->separator == row.separator);
    CHECK(document->rows.size() == 1);
  }
}

TEST_CASE("empty fields between tabs keep their places") {
  Problems problems;
  const auto document = parse_csv("a\tb\tc\td\n1\t\t \t4\n", "x.csv", problems);
  REQUIRE(document);
  CHECK(document->rows.at(0).fields == std::vector<std::string>{"1", "", "", "4"});
}

TEST_CASE("empty columns after the last head are left out, filled ones are not") {
  Problems problems;
  const auto document = parse_csv("a;b;;\n1;2;;\n3;4\n5;6;7;\n", "x.csv", problems);
  REQUIRE(document);
  CHECK(document->head == std::vector<std::string>{"a", "b"});
  CHECK(document->rows.size() == 2);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 4);
  CHECK(problems[0].hint == "put a field that holds a semicolon in quotes");
}

TEST_CASE("rows of the wrong length are all reported and left out") {
  Problems problems;
  const auto document = parse_csv("a,b\n1\n2,3\n4,5,6\n", "x.csv", problems);
  REQUIRE(document);
  CHECK(document->rows.size() == 1);
  REQUIRE(problems.size() == 2);
  CHECK(problems[0].line == 2);
  CHECK(problems[0].found == "1 fields");
  CHECK(problems[0].wanted == "wanted 2, one for each column head");
  CHECK(problems[1].line == 4);
}

TEST_CASE("a text that is no CSV is one problem with its remedy") {
  CHECK(only_csv_problem("").wanted == "is empty; wanted a row of column heads");
  CHECK(only_csv_problem("a,,c\n").wanted.find("a head for each") != std::string::npos);
  CHECK(only_csv_problem("a,b,a\n").wanted == "wanted each column head once");
  const Problem open = only_csv_problem("a,b\n1,\"x\n2,y\n");
  CHECK(open.line == 2);
  CHECK(open.wanted == "is a quoted field without its closing quote");
  const Problem after = only_csv_problem("a,b\n1,\"x\ny\" z\n");
  CHECK(after.line == 3);
  CHECK(after.wanted.find("a comma after the closing quote") != std::string::npos);
  const Problem latin = only_csv_problem("a,b\n1,\xE9t\xE9\n");
  CHECK(latin.line == 2);
  CHECK(latin.wanted.find("saved as UTF-8") != std::string::npos);
}

TEST_CASE("only well-formed UTF-8 without control characters is text") {
  CHECK_FALSE(first_not_text("plain\ttext\r\n\u00E9\u20AC\U0001F600"));
  for (const char* bad : {"\x01", "\xC0\xAF", "\xE0\x80\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80",
                          "\xF5\x80\x80\x80", "\xE2\x82", "\x80"}) {
    const auto found = first_not_text(std::string("ok\n") + bad);
    REQUIRE(found);
    CHECK(found->line == 2);
  }
  CHECK(first_not_text(std::string("a\0b", 3)).value().what == "a NUL byte (0x00)");
  CHECK(first_not_text("\x1b[2J").value().what == "the control character 0x1B");
  CHECK(first_not_text("\x7f").value().what == "the control character 0x7F");
  CHECK(first_not_text("caf\xe9").value().what == "the byte 0xE9, which is no UTF-8");
}

TEST_CASE("a table has 320,000 rows and 100 columns at most, and is not cut off in silence") {
  std::string rows = "a\n";
  for (int i = 0; i < 320'000; ++i) rows += "1\n";
  Problems problems;
  const auto longest = parse_csv(rows, "x.csv", problems);
  REQUIRE(longest);
  CHECK(longest->rows.size() == 320'000);
  const Problem one_more = only_csv_problem(rows + "1\n");
  CHECK(one_more.line == 320'002);
  CHECK(one_more.wanted == "wanted at most 320000 rows");
  CHECK(one_more.hint == "leave out rows that are not needed, such as years long past");
  std::string head = "c0";
  for (int i = 1; i < 100; ++i) head += fmt::format(",c{}", i);
  CHECK(parse_csv(head + "\n", "x.csv", problems));
  CHECK(only_csv_problem(head + ",c100\n").wanted == "wanted at most 100 columns");
  CHECK(problems.empty());
}

TEST_CASE("ten megabytes of rubbish are few problems") {
  std::mt19937 generator(1);
  std::string bytes(testing::cases<std::size_t>(10'000'000), ' ');
  for (char& byte : bytes) byte = static_cast<char>(generator() & 0xFFU);
  CHECK(only_csv_problem(bytes).wanted.find("saved as UTF-8") != std::string::npos);
  std::string rows = "a,b\n";
  for (int i = 0; i < 1'000'000; ++i) rows += "rubbish\n";
  Problems problems;
  CHECK(parse_csv(rows, "x.csv", problems));
  REQUIRE(problems.size() == most_listed_mistakes + 1);
  CHECK(problems.back().wanted == "has 999950 more rows with too many or too few fields");
}
