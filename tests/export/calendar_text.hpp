// Calendar text: the lines and values of an iCalendar file, for tests.
#pragma once

#include <string>
#include <vector>

#include <doctest/doctest.h>

namespace tackfree {

/// Physical lines; checks that each ends in CRLF.
inline std::vector<std::string> lines_of(const std::string& calendar) {
  std::vector<std::string> lines;
  std::size_t begin = 0;
  while (begin < calendar.size()) {
    const std::size_t end = calendar.find("\r\n", begin);
    REQUIRE(end != std::string::npos);
    lines.push_back(calendar.substr(begin, end - begin));
    begin = end + 2;
  }
  return lines;
}

inline std::vector<std::string> unfolded(const std::string& calendar) {
  std::vector<std::string> lines;
  for (const std::string& line : lines_of(calendar))
    if (line.starts_with(' '))
      lines.back() += line.substr(1);
    else
      lines.push_back(line);
  return lines;
}

inline std::vector<std::string> values(const std::string& calendar, const std::string& name) {
  std::vector<std::string> found;
  for (const std::string& line : unfolded(calendar))
    if (line.starts_with(name + ":")) found.push_back(line.substr(name.size() + 1));
  return found;
}

}  // namespace tackfree
