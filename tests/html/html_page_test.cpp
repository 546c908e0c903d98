#include "tackfree/html/html_page.hpp"

#include "holds.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

template <class Write>
std::string written(Write write) {
  Markup html;
  HtmlPage page(html);
  write(page);
  page.end();
  CHECK(html.is_closed());
  return html.markup();
}

}  // namespace

TEST_CASE("a heading begins a section that can be linked to, and ends the one before it") {
  const std::string html = written([](Page& page) {
    page.heading("Coats and film");
    page.paragraph(Lead::plain(), "x");
    page.heading("Grits");
  });
  CHECK(
      holds(html, "<section id=\"coats-and-film\"><h2>Coats and film</h2>\n<p>x</p>\n</section>"));
  CHECK(holds(html, "<section id=\"grits\"><h2>Grits</h2>\n</section>"));
}

TEST_CASE("paragraphs with leads of one kind are one list, of another kind another") {
  const std::string html = written([](Page& page) {
    page.paragraph(Lead::item(), "one");
    page.paragraph(Lead::item(), "two");
    page.paragraph(Lead::look(), "look");
    page.paragraph(Lead::labelled("Ready"), "Monday");
    page.paragraph(Lead::to_tick("2", 4), "rags");
  });
  CHECK(holds(html, "<ul class=\"points\"><li>one</li>\n<li>two</li>\n</ul>"));
  CHECK(holds(html, "<ul class=\"warnings\"><li>look</li>\n</ul>"));
  CHECK(holds(html, "<dt><bdi>Ready</bdi></dt>\n<dd><bdi>Monday</bdi></dd>"));
  CHECK(holds(html, "<label><input type=\"checkbox\"><b>2</b> <bdi>rags</bdi></label>"));
}

TEST_CASE("what a label says is not taken for what the paragraph is") {
  const std::string html = written([](Page& page) {
    page.paragraph(Lead::introduced("[ ] doors:"), "P180");
    page.paragraph(Lead::labelled("-"), "x");
    page.paragraph(Lead::ticked("Friday", 21), "coat 1");
    page.paragraph(Lead::question(), "Is that right?");
  });
  CHECK(holds(html, "<dt><bdi>[ ] doors:</bdi></dt>\n<dd><bdi>P180</bdi></dd>"));
  CHECK(holds(html, "<dt><bdi>-</bdi></dt>"));
  CHECK(holds(html, "<dt><bdi>[x] Friday</bdi></dt>"));
  CHECK(holds(html, "<dt><bdi>?</bdi></dt>"));
  CHECK_FALSE(holds(html, "<ul"));
}

TEST_CASE("a folded section is behind its heading, an unfolded one can be folded") {
  const std::string html = written([](Page& page) {
    auto& folding = dynamic_cast<HtmlPage&>(page);
    folding.sections(HtmlPage::Sections::folded);
    page.heading("Areas");
    page.paragraph(Lead::plain(), "x");
    folding.sections(HtmlPage::Sections::unfolded);
    page.heading("Grits");
  });
  CHECK(holds(
      html, "<details class=\"more\" id=\"areas\"><summary><h2>Areas</h2>\n</summary>\n<p>x</p>"));
  CHECK(holds(html, "<details class=\"more\" id=\"grits\" open><summary>"));
}

TEST_CASE("dangers and warnings look different from other terms") {
  const std::string html = written([](Page& page) {
    page.paragraph(Lead::danger(), "It burns.");
    page.paragraph(Lead::warning(), "It smells.");
  });
  CHECK(holds(html, "<div class=\"danger\"><dt><bdi>DANGER</bdi></dt>"));
  CHECK(holds(html, "<div class=\"warning\"><dt><bdi>WARNING</bdi></dt>"));
}

TEST_CASE("the heads of a table are heads, and a wide one says them at each cell for cards") {
  const std::string html = written([](Page& page) {
    page.heading("Areas");
    page.table({.head = {"part", "all"}, .rows = {{"<b>", "1.2"}}, .total = {"in all", "1.2"}});
  });
  CHECK_FALSE(holds(html, "data-head"));
  const std::string wide = written([](Page& page) {
    page.table({.head = {"part", "all"}, .rows = {{std::string(36, 'x'), "1.2"}}, .total = {}});
  });
  CHECK(holds(wide, "<table class=\"cards\">"));
  CHECK(holds(wide, "<td data-head=\"all\"><bdi>1.2</bdi></td>"));
  CHECK(holds(html, "<th scope=\"col\">all</th>"));
  CHECK(holds(html, "<th scope=\"row\"><bdi>&lt;b&gt;</bdi></th>"));
  CHECK(holds(html, "<tfoot>"));
  CHECK_FALSE(holds(written([](Page& page) { page.table({}); }), "<table>"));
}

TEST_CASE("nothing is written for a paragraph without words") {
  CHECK(written([](Page& page) { page.paragraph(Lead::labelled("pour", 0, 2), ""); }).empty());
}
