#include "tackfree/export/content_lines.hpp"

#include "export/calendar_text.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("lines are folded at 75 octets between characters and unfold to what they were") {
  const std::string line = "SUMMARY:" + std::string(66, 'x') + "\u6728\u6750" +
                           std::string(200, 'y') + "\U0001F333" + std::string(71, 'z');
  std::string joined;
  for (const std::string& part : lines_of(folded(line))) {
    CHECK(part.size() <= 75);
    const std::string content = joined.empty() ? part : part.substr(1);
    CHECK((static_cast<unsigned char>(content.front()) & 0xC0U) != 0x80U);
    joined += content;
  }
  CHECK(joined == line);
  CHECK(folded(std::string(75, 'x')) == std::string(75, 'x') + "\r\n");
  CHECK(folded(std::string(76, 'x')) == std::string(75, 'x') + "\r\n x\r\n");
  CHECK(lines_of(folded(std::string(500, '\x80'))).size() == 7);
}

TEST_CASE("text is escaped and holds no control character") {
  CHECK(escaped_text("a,b;c\\d\ne") == "a\\,b\\;c\\\\d\\ne");
  CHECK(escaped_text("a\x1b[2J\x7f") == "a[2J");
}

TEST_CASE("a property is escaped and folded, and a time is in UTC without signs") {
  CHECK(property("SUMMARY", "a;b") == "SUMMARY:a\\;b\r\n");
  CHECK(utc_form(*parse_instant("2027-04-10T22:30Z")) == "20270410T223000Z");
}
