// Calendar lines: content lines of an iCalendar file, unfolded, with their parameters.
#pragma once

#include "tackfree/base/problem.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// `DTSTART;TZID=Europe/Berlin:20270405T183000`. Names are in capitals.
struct CalendarLine {
  std::string name;
  std::map<std::string, std::string> parameters;
  std::string value;
  int line = 0;
};

/// Lines of a file that is longer, or has longer ones, are not read.
inline constexpr std::size_t longest_calendar_file = std::size_t{16} << 20;
inline constexpr std::size_t longest_calendar_line = std::size_t{256} << 10;

/// Every content line in order (RFC 5545, 3.1). Nothing, and a Problem, when the text is too long,
/// holds a NUL byte, or a line is too long or has no value.
std::optional<std::vector<CalendarLine>> calendar_lines(std::string_view text,
                                                        const std::string& file,
                                                        Problems& problems);

}  // namespace tackfree
