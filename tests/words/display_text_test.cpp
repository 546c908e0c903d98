#include "tackfree/words/display_text.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("no control character of a person's text is left") {
  std::string hostile;
  for (int byte = 0; byte < 256; ++byte) hostile += static_cast<char>(byte);
  hostile += "\x1b[31mred\x1b[0m\r\nnext\tline\u009b2J\u202Eturned\u2066";
  for (char c : clean(hostile)) {
    const auto byte = static_cast<unsigned char>(c);
    CHECK_MESSAGE((byte >= 0x20 && byte != 0x7F), "byte " << int{byte});
  }
  CHECK(clean("a\x1b[31mb") == "a[31mb");
  CHECK(clean("a\u009bb\u202Ec") == "abc");
  CHECK(clean("two\r\n\tlines") == "two   lines");
  CHECK(clean(clean(hostile)) == clean(hostile));
}

TEST_CASE("bytes that are no UTF-8 become the replacement character") {
  CHECK(clean("a\xFFz") == "a\uFFFDz");
  CHECK(clean("a\xC3") == "a\uFFFD");
  CHECK(clean("\xED\xA0\x80") == "\uFFFD\uFFFD\uFFFD");  // a surrogate
  CHECK(clean("\xC0\x9B") == "\uFFFD\uFFFD");            // ESC written too long
  CHECK(clean("caf\u00e9 \u6728 \U0001F333") == "caf\u00e9 \u6728 \U0001F333");
}

TEST_CASE("wide characters take two columns and combining marks none") {
  CHECK(display_width("oak") == 3);
  CHECK(display_width("\u00b5m\u00b2") == 3);
  CHECK(display_width("\u6728\u6750") == 4);
  CHECK(display_width("\U0001F333") == 2);
  CHECK(display_width("e\u0301") == 1);
  CHECK(display_width("\u05D0\u05B8\u05C1") == 1);        // Hebrew letter with two points
  CHECK(display_width("\u0915\u094D\u0937\u0941") == 2);  // Devanagari virama and vowel sign
  CHECK(display_width("\u0E17\u0E35\u0E48") == 1);        // Thai vowel and tone above
  CHECK(display_width("\u304B\u3099") == 2);              // kana with its voicing mark
}

TEST_CASE("what does not fit is cut with an ellipsis and never wider than asked") {
  CHECK(cut_to(5, "bench") == "bench");
  CHECK(cut_to(4, "bench") == "ben\u2026");
  CHECK(cut_to(4, "\u6728\u6750\u6728") == "\u6728\u2026");
  CHECK(cut_to(0, "bench").empty());
  CHECK(pad_right(4, "\u6728") == "\u6728  ");
  CHECK(pad_left(6, "4.2") == "   4.2");
  CHECK(display_width(pad_left(6, std::string(10000, 'x'))) == 6);
}

TEST_CASE("what is held together is not broken over two lines") {
  CHECK(wrapped(8, "air at 19 \u00b0C") == std::vector<std::string>{"air at", "19 \u00b0C"});
  CHECK(wrapped(10, "air " + held_together("at 19 \u00b0C")) ==
        std::vector<std::string>{"air", "at 19 \u00b0C"});
}

TEST_CASE("a name cut inside keeps its end") {
  CHECK(cut_inside(14, "table tops, lot 1") == "table \u2026, lot 1");
  CHECK(cut_inside(17, "table tops, lot 1") == "table tops, lot 1");
  CHECK(cut_inside(5, "\u6728\u6750\u6728\u6750") == "\u6728\u2026\u6750");
  CHECK(cut_inside(4, "abcdee\u0301") == "a\u2026ee\u0301");
  CHECK(cut_inside(3, "abcde\u0301f") == "a\u2026f");
  CHECK(cut_inside(1, "bench") == "\u2026");
  CHECK(cut_inside(0, "bench").empty());
  CHECK(display_width(cut_inside(20, std::string(10'000, 'n'))) == 20);
}

TEST_CASE("long text is wrapped at spaces and long words are cut") {
  CHECK(wrapped(10, "sand with the grain") == std::vector<std::string>{"sand with", "the grain"});
  CHECK(wrapped(5, "abcdefgh x") == std::vector<std::string>{"abcd\u2026", "x"});
  CHECK(wrapped(5, " \n ").empty());
  CHECK(wrapped(20, "two\n\n lines ") == std::vector<std::string>{"two lines"});
  for (const std::string& line : wrapped(20, std::string(10000, 'w') + " end"))
    CHECK(display_width(line) <= 20);
}
