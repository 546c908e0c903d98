#include "tackfree/base/problem.hpp"

#include <doctest/doctest.h>

namespace tackfree {
namespace {

TEST_CASE("a problem names file, line, key, value, what is wanted and the way out") {
  const Problem problem{.file = "parts.csv",
                        .line = 7,
                        .key = "width",
                        .found = "-3 in",
                        .wanted = "wanted a length over 0",
                        .hint = "leave the row out if the part is not coated"};
  CHECK(
      to_text(problem) ==
      "parts.csv:7: width: found \"-3 in\"; wanted a length over 0; leave the row out if the part "
      "is not coated");
}

TEST_CASE("what was found cannot speak to the terminal, and is cut when long") {
  CHECK(to_text({.found = "a\x1b[31m\n", .wanted = "wanted text"}) ==
        "found \"a\\x1B[31m\\x0A\"; wanted text");
  const std::string text = to_text({.found = std::string(1000, 'x'), .wanted = "w"});
  CHECK(text.size() < 100);
  // A cut never splits a letter of several bytes.
  std::string umlauts;
  for (int i = 0; i < 100; ++i) umlauts += "ü";
  const std::string cut = to_text({.found = "x" + umlauts, .wanted = "w"});
  CHECK(cut.find("ü...\"") != std::string::npos);
}

}  // namespace
}  // namespace tackfree
