// SVG: shapes and labels of a chart, their coordinates to a tenth of a unit.
#pragma once

#include "tackfree/html/markup.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// A point of a chart: x to the right, y down.
struct ChartPoint {
  double x = 0, y = 0;
};

struct ChartBox {
  double x = 0, y = 0, width = 0, height = 0;
};

struct ChartLine {
  ChartPoint from, to;
};

/// Height of the letters of a label, in units of the chart; a phone shows a unit as a pixel.
inline constexpr double letter_height = 13;
/// What a line of labels takes, and what lies between rows; columns that fit beside each other.
inline constexpr double label_line = 17, row_gap = 6;
inline constexpr std::size_t longest_label = 36;

/// Class names say what a shape means; the style sheet says how that looks.
void svg_box(Markup& svg, std::string_view meaning, const ChartBox& box);
void svg_line(Markup& svg, std::string_view meaning, ChartPoint from, ChartPoint to);
/// Boxes or lines of one meaning as one shape; nothing for none.
void svg_boxes(Markup& svg, std::string_view meaning, const std::vector<ChartBox>& boxes);
void svg_lines(Markup& svg, std::string_view meaning, const std::vector<ChartLine>& lines);
/// Points joined by straight lines; nothing for fewer than two.
void svg_curve(Markup& svg, std::string_view meaning, const std::vector<ChartPoint>& points);
void svg_area(Markup& svg, std::string_view meaning, const std::vector<ChartPoint>& outline);
void svg_dot(Markup& svg, std::string_view meaning, ChartPoint at);
void svg_label(Markup& svg, std::string_view meaning, ChartPoint at, std::string_view text);
/// What is told when a pointer rests on the shapes of the open group.
void svg_told(Markup& svg, std::string_view text);

/// What a chart is called and what it shows, for those who do not see it.
struct ChartWords {
  std::string name;  ///< unique on the page, for its ids
  std::string title, description;
  std::string caption = {};  ///< stands above it
};

/// Opens a figure with an image of that size, which the page fits to the width it has.
void open_chart(Markup& html, const ChartWords& words, double width, double height);
void close_chart(Markup& html);

/// What one look of a shape means.
struct LegendEntry {
  enum class Shape { box, line, upright, dot };
  std::string_view meaning;  ///< the class of the shapes
  std::string words;
  Shape shape = Shape::box;
};
void write_legend(Markup& html, const std::vector<LegendEntry>& entries);

/// Places for labels along a line, so that none stands over another.
class LabelLine {
 public:
  /// Columns that a label of that text takes, in units of the chart.
  static double width_of(std::string_view text);
  /// Whether a label that begins at `x` is clear of those before it; if so its place is taken.
  bool takes(double x, std::string_view text);

 private:
  double taken_to_ = -1e9;
};

}  // namespace tackfree
