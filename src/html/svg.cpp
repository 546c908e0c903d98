#include "tackfree/html/svg.hpp"

#include "tackfree/words/display_text.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string tenth(double value) {
  std::string text = fmt::format("{:.1f}", value);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text == "-0" ? "0" : text;
}

std::string points_text(const std::vector<ChartPoint>& points) {
  std::string text;
  for (const ChartPoint& point : points)
    text += fmt::format("{}{},{}", text.empty() ? "" : " ", tenth(point.x), tenth(point.y));
  return text;
}

void write_path(Markup& svg, std::string_view meaning, const std::string& path) {
  if (!path.empty()) svg.element("path", {{"class", std::string(meaning)}, {"d", path}}, "");
}

}  // namespace

void svg_box(Markup& svg, std::string_view meaning, const ChartBox& box) {
  svg.element("rect",
              {{"class", std::string(meaning)},
               {"x", tenth(box.x)},
               {"y", tenth(box.y)},
               {"width", tenth(box.width)},
               {"height", tenth(box.height)}},
              "");
}

void svg_line(Markup& svg, std::string_view meaning, ChartPoint from, ChartPoint to) {
  svg.element("line",
              {{"class", std::string(meaning)},
               {"x1", tenth(from.x)},
               {"y1", tenth(from.y)},
               {"x2", tenth(to.x)},
               {"y2", tenth(to.y)}},
              "");
}

void svg_boxes(Markup& svg, std::string_view meaning, const std::vector<ChartBox>& boxes) {
  std::string path;
  for (const ChartBox& box : boxes)
    path += fmt::format("M{},{}h{}v{}H{}z", tenth(box.x), tenth(box.y), tenth(box.width),
                        tenth(box.height), tenth(box.x));
  write_path(svg, meaning, path);
}

void svg_lines(Markup& svg, std::string_view meaning, const std::vector<ChartLine>& lines) {
  std::string path;
  for (const auto& [from, to] : lines)
    path += fmt::format("M{},{}L{},{}", tenth(from.x), tenth(from.y), tenth(to.x), tenth(to.y));
  write_path(svg, meaning, path);
}

void svg_curve(Markup& svg, std::string_view meaning, const std::vector<ChartPoint>& points) {
  if (points.size() < 2) return;
  svg.element("polyline", {{"class", std::string(meaning)}, {"points", points_text(points)}}, "");
}

void svg_area(Markup& svg, std::string_view meaning, const std::vector<ChartPoint>& outline) {
  if (outline.size() < 3) return;
  svg.element("polygon", {{"class", std::string(meaning)}, {"points", points_text(outline)}}, "");
}

void svg_dot(Markup& svg, std::string_view meaning, ChartPoint at) {
  svg.element(
      "circle",
      {{"class", std::string(meaning)}, {"cx", tenth(at.x)}, {"cy", tenth(at.y)}, {"r", "3"}}, "");
}

void svg_label(Markup& svg, std::string_view meaning, ChartPoint at, std::string_view text) {
  svg.element("text", {{"class", std::string(meaning)}, {"x", tenth(at.x)}, {"y", tenth(at.y)}},
              text);
}

void svg_told(Markup& svg, std::string_view text) { svg.element("title", {}, text); }

void open_chart(Markup& html, const ChartWords& words, double width, double height) {
  html.open("figure", {{"class", "chart"}});
  if (!words.caption.empty()) html.element("figcaption", {}, words.caption);
  html.open("svg", {{"viewBox", fmt::format("0 0 {} {}", tenth(width), tenth(height))},
                    {"role", "img"},
                    {"aria-labelledby", fmt::format("{0}-title {0}-desc", words.name)}});
  html.element("title", {{"id", words.name + "-title"}}, words.title);
  html.element("desc", {{"id", words.name + "-desc"}}, words.description);
}

void close_chart(Markup& html) {
  html.close();
  html.close();
}

void write_legend(Markup& html, const std::vector<LegendEntry>& entries) {
  constexpr double width = 26, height = 14;
  html.open("ul", {{"class", "legend"}});
  for (const LegendEntry& entry : entries) {
    html.open("li");
    html.open("svg", {{"viewBox", fmt::format("0 0 {} {}", width, height)},
                      {"width", tenth(width)},
                      {"height", tenth(height)},
                      {"aria-hidden", "true"},
                      {"focusable", "false"}});
    if (entry.shape == LegendEntry::Shape::line)
      svg_line(html, entry.meaning, {0, height / 2}, {width, height / 2});
    else if (entry.shape == LegendEntry::Shape::upright)
      svg_line(html, entry.meaning, {width / 2, 0}, {width / 2, height});
    else if (entry.shape == LegendEntry::Shape::dot)
      svg_dot(html, entry.meaning, {width / 2, height / 2});
    else
      svg_box(html, entry.meaning, {0.5, 0.5, width - 1, height - 1});
    html.close();
    html.text(entry.words);
    html.close();
  }
  html.close();
}

double LabelLine::width_of(std::string_view text) {
  constexpr double column = 0.62 * letter_height;  // rather wide
  return column * static_cast<double>(display_width(text));
}

bool LabelLine::takes(double x, std::string_view text) {
  constexpr double gap = 5;
  if (x < taken_to_ + gap) return false;
  taken_to_ = x + width_of(text);
  return true;
}

}  // namespace tackfree
