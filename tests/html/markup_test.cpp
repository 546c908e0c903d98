#include "tackfree/html/markup.hpp"

#include <stdexcept>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("what means something in HTML becomes a reference, in text and in attributes") {
  CHECK(escaped_markup("a < b & c > \"d\" 'e'") ==
        "a &lt; b &amp; c &gt; &quot;d&quot; &#39;e&#39;");
  Markup html;
  html.element("p", {{"title", "\"><script>"}}, "</p><script>");
  CHECK(html.markup() == "<p title=\"&quot;&gt;&lt;script&gt;\">&lt;/p&gt;&lt;script&gt;</p>\n");
}

TEST_CASE("an attribute without a value stands alone") {
  Markup html;
  html.open("details", {{"class", "more"}, {"open", ""}});
  html.close();
  CHECK(html.markup() == "<details class=\"more\" open></details>\n");
}

TEST_CASE("control characters, direction marks and bytes that are no UTF-8 never reach the page") {
  const std::string text = escaped_markup(hostile_name());
  for (const char c : text) CHECK_FALSE((static_cast<unsigned char>(c) < 0x20 || c == 0x7f));
  CHECK(text.find("\xE2\x80\xAE") == std::string::npos);
  CHECK(text.find("\xff") == std::string::npos);
  CHECK(text.find('<') == std::string::npos);
}

TEST_CASE("a text of ten thousand characters is cut, and a reference never is") {
  CHECK(escaped_markup(std::string(10000, 'n')).size() < longest_shown + 4);
  const std::string text = escaped_markup(std::string(10000, '<'));
  CHECK(text.ends_with("&lt;\u2026"));
}

TEST_CASE("a person's words stand in an element that isolates their reading direction") {
  Markup html;
  html.isolated("\u05d0\u05d1 (2)");
  CHECK(html.markup() == "<bdi>\u05d0\u05d1 (2)</bdi>");
}

TEST_CASE("elements close in the order in which they were opened, and no more than those") {
  Markup html;
  html.open("ul");
  html.open("li");
  html.text("x");
  html.close();
  CHECK_FALSE(html.is_closed());
  html.close();
  CHECK(html.is_closed());
  CHECK(html.markup() == "<ul><li>x</li>\n</ul>\n");
  CHECK_THROWS_AS(html.close(), std::logic_error);
}
