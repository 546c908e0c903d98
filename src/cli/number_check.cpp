#include "tackfree/cli/number_check.hpp"

#include "tackfree/base/problem.hpp"

#include <algorithm>
#include <charconv>
#include <optional>

#include <fmt/format.h>

namespace tackfree {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Nothing where the text is no plain number.
std::optional<double> plain_number(std::string_view text) {
  const std::string_view digits =
      text.substr(text.starts_with('-') || text.starts_with('+') ? 1 : 0);
  if (text.starts_with('+')) text = digits;
  if (digits.empty() || !std::ranges::any_of(digits, is_digit) ||
      !std::ranges::all_of(digits, [](char c) { return is_digit(c) || c == '.'; }))
    return std::nullopt;
  double value = 0;
  const char* const end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (read.ec != std::errc() || read.ptr != end) return std::nullopt;
  return value;
}

}  // namespace

std::string number_fault(std::string_view text, const OptionRange& range) {
  const auto value = plain_number(text);
  const bool whole = text.find('.') == std::string_view::npos;
  if (value && *value >= range.least && *value <= range.most && (whole || !range.whole)) return {};
  const std::string limits = fmt::format("from {} to {}", range.least, range.most);
  return to_text(
      {.found = text.empty() ? " " : std::string(text),
       .wanted = range.whole
                     ? fmt::format("wanted a whole number {}", limits)
                     : fmt::format("wanted a number {}, with a point before decimals", limits)});
}

}  // namespace tackfree
