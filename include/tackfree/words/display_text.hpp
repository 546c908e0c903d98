// Display text: a person's words made fit for a terminal, and its width, cut and wrapped.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// Valid UTF-8 without anything that could steer a terminal or turn the reading direction: line
/// ends and tabs become spaces, other control and invisible formatting characters are dropped,
/// bytes that are no UTF-8 become U+FFFD. Cleaning twice changes nothing. Every text that comes
/// from outside passes through here before it is shown.
std::string clean(std::string_view text);

/// JSON text with what `clean` would drop or take for a blank as `\uXXXX`, but spaces and line
/// ends.
std::string unseen_escaped(std::string_view json);

/// Columns that the cleaned text takes on a terminal: 2 for East Asian wide characters and emoji,
/// 0 for combining marks, else 1.
std::size_t display_width(std::string_view text);

/// The cleaned text in at most `columns` columns; what does not fit ends in an ellipsis.
std::string cut_to(std::size_t columns, std::string_view text);
/// The same with the dots inside: names that differ only at their end (`doors, lot 2`) stay
/// different.
std::string cut_inside(std::size_t columns, std::string_view text);

/// The text cut to `columns` and filled up with spaces on its right or left.
std::string pad_right(std::size_t columns, std::string_view text);
std::string pad_left(std::size_t columns, std::string_view text);

/// The cleaned text in lines of at most `columns` columns, broken at spaces; a longer word is cut
/// and runs of spaces count as one. A no-break space is written as a space.
std::vector<std::string> wrapped(std::size_t columns, std::string_view text);

/// The text with its first letter large, where that is a plain one.
std::string capitalized(std::string text);

/// Up to the first full stop that ends a sentence.
std::string first_sentence(const std::string& text);

/// The text with no-break spaces, so that a figure is not parted from its unit.
std::string held_together(std::string text);

}  // namespace tackfree
