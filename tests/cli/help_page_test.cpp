#include "tackfree/cli/help_page.hpp"

#include "tackfree/cli/options.hpp"
#include "tackfree/words/display_text.hpp"

#include <sstream>

#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("help keeps to 80 columns and names no type of the library") {
  REQUIRE(help_page());
  for (const char* command : {"plan", "tonight", "drying"}) {
    const std::string text = read_options({command, "--help"}).text;
    CHECK(text.find("TEXT") == std::string::npos);
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
      CHECK_MESSAGE(display_width(line) <= 80, line);
  }
}

}  // namespace tackfree
