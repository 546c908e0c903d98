#include "tackfree/base/name.hpp"

#include <vector>

#include <doctest/doctest.h>

namespace tackfree {
namespace {

const std::vector<std::string> words{"quantity", "length", "width", "thickness"};

TEST_CASE("a slip of the pen finds the nearest name") {
  CHECK(nearest_name("quantiy", words) == "quantity");
  CHECK(nearest_name("lenght", words) == "length");  // two neighbours swapped
  CHECK(nearest_name("WIDTH", words) == "width");
  CHECK_FALSE(nearest_name("colour", words));
  CHECK_FALSE(nearest_name("", words));
  CHECK_FALSE(nearest_name(std::string(100000, 'x'), words));
}

TEST_CASE("the hint lists what is known when nothing is near") {
  CHECK(name_hint("lenght", words) == "did you mean \"length\"?");
  CHECK(name_hint("colour", words) == "known: quantity, length, width, thickness");
}

TEST_CASE("slugs keep different names different") {
  CHECK(slug("Seat, top") == "seat-top");
  CHECK(slug("  Leg  No. 2 ") == "leg-no-2");
  CHECK(slug("Tür") != slug("Tor"));
  CHECK(slug("///") == "x");
  CHECK(slug("a/../b") == "a-b");
}

}  // namespace
}  // namespace tackfree
