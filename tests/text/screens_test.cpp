#include "tackfree/text/screens.hpp"

#include "tackfree/words/display_text.hpp"

#include <sstream>

#include "two_choices.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("no line of a screen is wider than the terminal, and colour is only where asked for") {
  for (const int columns : {40, 80, 200}) {
    std::istringstream screen(choices_text(two_choices(), columns) +
                              log_text(two_choices().ways.front().job, columns));
    for (std::string line; std::getline(screen, line);)
      CHECK(display_width(line) <= static_cast<std::size_t>(columns));
  }
  CHECK(choices_text(two_choices()).find('\x1b') == std::string::npos);
  CHECK(choices_text(two_choices(), 80, Ink::coloured).find('\x1b') != std::string::npos);
}
