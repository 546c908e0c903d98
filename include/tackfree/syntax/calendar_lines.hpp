// Calendar lines: content lines of an iCalendar file, unfolded, with their parameters.
#pragma once

#include "tackfree/base/problem.hpp"

#include <map>
#include <string>
#include <string_view>

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

/// The content lines of a file one after another (RFC 5545, 3.1), so that a long file is never held
/// as lines. Nothing more, and a Problem, when the text is too long, holds a NUL byte, or a line is
/// too long or has no value.
class CalendarLines {
 public:
  /// Refers to all three.
  CalendarLines(std::string_view text, const std::string& file, Problems& problems);

  /// The next line; false at the end, or where there is a Problem.
  bool next(CalendarLine& line);

 private:
  bool unfold(int& line);
  std::string_view physical();
  void refuse(int line, std::string wanted);

  std::string_view text_;
  const std::string& file_;
  Problems& problems_;
  std::string content_;
  std::size_t at_ = 0;
  int number_ = 1;
  bool failed_ = false;
};

}  // namespace tackfree
