#include "tackfree/html/svg.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("coordinates have a tenth at the most and no nought below it") {
  Markup svg;
  svg_box(svg, "work", {1.04, 2.06, 3, 0.25});
  CHECK(svg.markup() ==
        "<rect class=\"work\" x=\"1\" y=\"2.1\" width=\"3\" height=\"0.2\"></rect>\n");
  Markup line;
  svg_line(line, "grid", {-0.01, 0}, {10, 0});
  CHECK(line.markup().find("x1=\"0\"") != std::string::npos);
}

TEST_CASE("a curve needs two points and an area three") {
  Markup svg;
  svg_curve(svg, "air", {{0, 0}});
  svg_area(svg, "drying", {{0, 0}, {1, 1}});
  CHECK(svg.markup().empty());
  svg_curve(svg, "air", {{0, 0}, {1, 2.5}});
  CHECK(svg.markup().find("points=\"0,0 1,2.5\"") != std::string::npos);
}

TEST_CASE("boxes and lines of one meaning are one shape, none of them no shape") {
  Markup svg;
  svg_boxes(svg, "night", {});
  svg_lines(svg, "grid", {});
  CHECK(svg.markup().empty());
  svg_boxes(svg, "night", {{1, 2, 3, 4}, {5, 6, 7, 8}});
  svg_lines(svg, "grid", {{{0, 1}, {10, 1}}});
  CHECK(svg.markup() ==
        "<path class=\"night\" d=\"M1,2h3v4H1zM5,6h7v8H5z\"></path>\n"
        "<path class=\"grid\" d=\"M0,1L10,1\"></path>\n");
}

TEST_CASE("a chart is an image named by its title and its description") {
  Markup html;
  open_chart(html, {"days-1", "Work & waits", "sand, then wait", "Friday"}, 760, 100);
  close_chart(html);
  CHECK(html.is_closed());
  CHECK(html.markup().find("aria-labelledby=\"days-1-title days-1-desc\"") != std::string::npos);
  CHECK(html.markup().find("<figcaption>Friday</figcaption>") != std::string::npos);
  CHECK(html.markup().find("<title id=\"days-1-title\">Work &amp; waits</title>") !=
        std::string::npos);
  CHECK(html.markup().find("<desc id=\"days-1-desc\">sand, then wait</desc>") != std::string::npos);
}

TEST_CASE("a label is not written over the one before it") {
  LabelLine line;
  CHECK(line.takes(0, "coat 1"));
  CHECK_FALSE(line.takes(20, "sand"));
  CHECK(line.takes(LabelLine::width_of("coat 1") + 6, "sand"));
}

TEST_CASE("a legend says what each look means") {
  Markup html;
  write_legend(html, {{"air", "the air", LegendEntry::Shape::line},
                      {"touch", "touch-dry", LegendEntry::Shape::dot},
                      {"work", "your work"}});
  CHECK(html.is_closed());
  CHECK(html.markup().find("<line class=\"air\"") != std::string::npos);
  CHECK(html.markup().find("<circle class=\"touch\"") != std::string::npos);
  CHECK(html.markup().find("your work") != std::string::npos);
}
