#include "tackfree/cli/number_check.hpp"

#include <string>

#include <doctest/doctest.h>

namespace tackfree {
namespace {

TEST_CASE("plain decimals within the range are numbers, ends included") {
  for (const char* text : {"-40", "-40.0", "+20.5", "20.", ".5", "0", "60", "00012"}) {
    CAPTURE(text);
    CHECK(number_fault(text, {-40, 60}).empty());
  }
}

TEST_CASE("what is no plain decimal, or out of the range, is told with what would be right") {
  for (const char* text : {"nan",  "-nan",  "inf",
                           "-inf", "0x14",  "0X1p3",
                           "1e1",  "20,5",  "",
                           " ",    "-",     "+-3",
                           "-+3",  "1.2.3", ".",
                           "12 C", "60.1",  "-40.001",
                           "1_0",  "1'0",   "99999999999999999999999999999999999999999"}) {
    CAPTURE(text);
    const std::string fault = number_fault(text, {-40, 60});
    CHECK(fault.find("wanted a number from -40 to 60") != std::string::npos);
    CHECK(fault.find("found \"") != std::string::npos);
  }
}

TEST_CASE("a whole number has no point") {
  CHECK(number_fault("3", {1, 1000, true}).empty());
  for (const char* text : {"3.0", "0", "1001", "0x3"})
    CHECK(number_fault(text, {1, 1000, true}).find("wanted a whole number from 1 to 1000") !=
          std::string::npos);
}

}  // namespace
}  // namespace tackfree
