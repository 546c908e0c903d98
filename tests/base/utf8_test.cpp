#include "tackfree/base/utf8.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace tackfree;

// Source: RFC 3629, sections 3 and 7: the ranges of the bytes, and the examples of section 7.
TEST_CASE("characters are told apart by the bytes that RFC 3629 gives them") {
  CHECK(first_character("A").code == 0x41);
  CHECK(first_character("\xE2\x89\xA2\xCE\x91.").code == 0x2262);
  CHECK(first_character("\xED\x95\x9C").code == 0xD55C);
  CHECK(first_character("\xF0\xA3\x8E\xB4").code == 0x233B4);
  CHECK(first_character("\xF0\xA3\x8E\xB4").bytes.size() == 4);
  CHECK(first_character("\xF4\x8F\xBF\xBF").code == 0x10FFFF);
}

TEST_CASE("a byte that begins no character stands alone") {
  for (const std::string text :
       {"\x80", "\xC0\x80", "\xC1\xBF", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xF0\x8F\xBF\xBF",
        "\xF4\x90\x80\x80", "\xF5", "\xE2\x89", "\xE2\x89z"}) {
    CAPTURE(text.size());
    const Utf8Character first = first_character(text);
    CHECK_FALSE(first.valid);
    CHECK(first.code == 0xFFFD);
    CHECK(first.bytes.size() == 1);
  }
}

TEST_CASE("a text is cut between two characters, or anywhere where it is no UTF-8") {
  CHECK(head_of("a\u00e9b", 2) == "a");
  CHECK(head_of("a\u00e9b", 3) == "a\u00e9");
  CHECK(head_of("\U0001F333x", 4) == "\U0001F333");
  CHECK(head_of("ab", 5) == "ab");
  CHECK(head_of(std::string(9, '\x80'), 5).size() == 5);  // no UTF-8: must still get on
}
