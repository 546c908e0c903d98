// HTML style: the look of the page on light and dark screens and on paper, and chart patterns.
#pragma once

#include <string>
#include <string_view>

namespace tackfree {

/// A style sheet, for inside a style element.
std::string html_style();

/// Patterns that the charts fill boxes with, so that they can be told apart without colour: an SVG
/// image of no size.
std::string_view chart_patterns();

}  // namespace tackfree
