#include "tackfree/text/text_page.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a paragraph hangs below its lead") {
  TextPage page(40);
  page.paragraph(Lead::labelled("why", 0, 2), "the garage is too cold to coat until ten");
  CHECK(page.text() ==
        "  why the garage is too cold to coat\n"
        "      until ten\n");
}

TEST_CASE("each kind of paragraph begins with its own mark, labels in columns of one width") {
  TextPage page(40);
  page.paragraph(Lead::item(), "item");
  page.paragraph(Lead::look(0), "look");
  page.paragraph(Lead::question(), "question");
  page.paragraph(Lead::to_tick("2", 4), "rags");
  page.paragraph(Lead::ticked("Friday", 8), "done");
  page.paragraph(Lead::labelled("Buy", 5), "tins");
  page.paragraph(Lead::labelled("Proved", 5), "a label too long is not cut");
  page.paragraph(Lead::introduced("No", 0, 4), "log nothing");
  page.paragraph(Lead::timed("9:05", 6, 2), "coat");
  page.paragraph(Lead::warning(8), "rags");
  CHECK(page.text() ==
        "  - item\n"
        "! look\n"
        "  ? question\n"
        "[ ]    2 rags\n"
        "[x] Friday   done\n"
        "Buy   tins\n"
        "Proved a label too long is not cut\n"
        "No:  log nothing\n"
        "    9:05  coat\n"
        "WARNING  rags\n");
}

TEST_CASE("a lead that is too long is cut and leaves half the page to the text") {
  TextPage page(40);
  page.paragraph(Lead::labelled(std::string(100, 'n')), "word");
  CHECK(page.text() == std::string(19, 'n') + "\u2026word\n");
}

TEST_CASE("a line holds no control character and ends without blanks") {
  TextPage page(40);
  page.line(2, "a\x1b[2J\nb  ");
  CHECK(page.text() == "  a[2J b\n");
}

TEST_CASE("what is printed has line ends and, where it is coloured, the codes of a page alone") {
  const std::string text = "\x1b[1ma\x1b[0m\x1b[2J\n\r\x07\x7f\u009b\u202eb\xff\x1b[1";
  CHECK(printable(text, Ink::coloured) == "\x1b[1ma\x1b[0m[2J\n b\uFFFD[1");
  CHECK(printable(text, Ink::plain) == "[1ma[0m[2J\n b\uFFFD[1");
  CHECK(printable("a\n\nb\n", Ink::plain) == "a\n\nb\n");
}

TEST_CASE("blank lines do not pile up") {
  TextPage page(40);
  page.blank();
  page.line(0, "a");
  page.blank();
  page.blank();
  page.heading("how to");
  CHECK(page.text() == "a\n\nHOW TO\n");
}

TEST_CASE("numbers of a table stand flush right and the total below a rule") {
  TextPage page(40);
  page.table({.head = {"part", "face"},
              .rows = {{"seat", "10.5"}, {"\u6728", "2.0"}},
              .total = {"all", "12.5"}});
  CHECK(page.text() ==
        "  part  face\n"
        "  seat  10.5\n"
        "  \u6728     2.0\n"
        "  ----------\n"
        "  all   12.5\n");
}

TEST_CASE("a long name in a table is cut, the numbers are not") {
  TextPage page(40);
  page.table({.head = {"part", "face"}, .rows = {{std::string(10000, 'x'), "1234.5"}}});
  CHECK(page.text().find("\u2026  1234.5\n") != std::string::npos);
}

TEST_CASE("danger has the ink of danger however wide its label is, a warning that of a look") {
  const auto ink = [](const Lead& lead) {
    TextPage page(40, Ink::coloured);
    page.paragraph(lead, "x");
    return page.text().substr(0, page.text().find('m') + 1);
  };
  CHECK(ink(Lead::danger(9)) == ink(Lead::danger()));
  CHECK(ink(Lead::warning(9)) == ink(Lead::look()));
  CHECK(ink(Lead::danger()) != ink(Lead::warning()));
  CHECK(ink(Lead::labelled("DANGER")) == ink(Lead::item()));
}

TEST_CASE("a coloured page is the plain page with codes of its own in it") {
  const auto write = [](Page& page) {
    page.heading("Cautions\x1b[31m");
    page.subheading("one two three four five six seven eight nine ten eleven");
    page.paragraph(Lead::danger(7), "Stop.");
    page.paragraph(Lead::look(), "Look at this, which takes more than one line of the page.");
    page.table({.head = {"part", "all"}, .rows = {{"seat", "1"}}, .total = {"in all", "1"}});
  };
  TextPage plain(40), coloured(40, Ink::coloured);
  write(plain);
  write(coloured);
  CHECK(plain.text().find('\x1b') == std::string::npos);
  std::string without = coloured.text();
  CHECK(without.find("\x1b[") != std::string::npos);
  std::size_t on = 0, off = 0;
  for (std::size_t at = 0; (at = without.find("\x1b[", at)) != std::string::npos; ++at)
    ++(without.compare(at, 4, "\x1b[0m") == 0 ? off : on);
  CHECK(on == off);
  for (std::size_t at = 0; (at = without.find("\x1b[")) != std::string::npos;)
    without.erase(at, without.find('m', at) - at + 1);
  CHECK(without == plain.text());
}

TEST_CASE("a table too wide for the page becomes a name and a line for each value") {
  const Table table{.head = {"part", "against the grain", "end grain", "all"},
                    .rows = {{"seat", "10.5", "-", "10.5"}, {"leg", "2.0", "1.0", "3.0"}},
                    .total = {"all parts", "12.5", "1.0", "13.5"}};
  TextPage narrow(40);
  narrow.table(table);
  CHECK(narrow.text() ==
        "  seat\n"
        "    against the grain: 10.5\n"
        "    all: 10.5\n"
        "  leg\n"
        "    against the grain: 2.0\n"
        "    end grain: 1.0\n"
        "    all: 3.0\n"
        "  all parts\n"
        "    against the grain: 12.5\n"
        "    end grain: 1.0\n"
        "    all: 13.5\n");
  TextPage wide(60);
  wide.table(table);
  CHECK(wide.text().starts_with("  part       against the grain  end grain   all\n"));
}
