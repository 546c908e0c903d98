#include "tackfree/html/style.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("the style knows dark screens and paper, and fetches nothing") {
  const std::string style = html_style();
  CHECK(style.find("prefers-color-scheme: dark") != std::string::npos);
  CHECK(style.find("@media print") != std::string::npos);
  CHECK(style.find("break-inside: avoid") != std::string::npos);
  CHECK(style.find("http") == std::string::npos);
  CHECK(style.find("@import") == std::string::npos);
  CHECK(style.find("</") == std::string::npos);
}

TEST_CASE("every pattern that the style fills with is there") {
  const std::string style = html_style(), patterns(chart_patterns());
  for (std::size_t at = 0; (at = style.find("url(#", at)) != std::string::npos;) {
    at += 5;
    const std::string name = style.substr(at, style.find(')', at) - at);
    CHECK_MESSAGE(patterns.find("id=\"" + name + "\"") != std::string::npos, name);
  }
}
