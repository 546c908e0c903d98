#include "tackfree/syntax/calendar_lines.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string in_capitals(std::string_view text) {
  std::string capitals(text);
  for (char& c : capitals)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return capitals;
}

/// The first of `signs` from `at` on that stands outside quotation marks.
std::size_t find_unquoted(std::string_view text, std::size_t at, std::string_view signs) {
  bool quoted = false;
  for (; at < text.size(); ++at) {
    if (text[at] == '"') quoted = !quoted;
    if (!quoted && signs.find(text[at]) != std::string_view::npos) return at;
  }
  return std::string_view::npos;
}

std::string unquoted(std::string_view text) {
  if (text.size() >= 2 && text.front() == '"' && text.back() == '"')
    text = text.substr(1, text.size() - 2);
  return std::string(text);
}

/// Nothing when there is no value.
std::optional<CalendarLine> parsed(std::string_view text, int line) {
  std::size_t at = find_unquoted(text, 0, ";:");
  if (at == 0 || at == std::string_view::npos) return std::nullopt;
  CalendarLine result{.name = in_capitals(text.substr(0, at)), .line = line};
  while (text[at] == ';') {
    const std::size_t end = find_unquoted(text, at + 1, ";:");
    if (end == std::string_view::npos) return std::nullopt;
    const std::string_view parameter = text.substr(at + 1, end - at - 1);
    const std::size_t equals = parameter.find('=');
    if (equals != std::string_view::npos)
      result.parameters[in_capitals(parameter.substr(0, equals))] =
          unquoted(parameter.substr(equals + 1));
    at = end;
  }
  result.value = std::string(text.substr(at + 1));
  return result;
}

}  // namespace

CalendarLines::CalendarLines(std::string_view text, const std::string& file, Problems& problems)
    : text_(text), file_(file), problems_(problems) {
  if (text.size() > longest_calendar_file) {
    refuse(0, fmt::format("wanted a calendar file of at most {} MiB", longest_calendar_file >> 20));
    return;
  }
  if (text_.starts_with("\xEF\xBB\xBF")) text_.remove_prefix(3);
  if (const std::size_t nul = text_.find('\0'); nul != std::string_view::npos)
    refuse(1 + static_cast<int>(
                   std::count(text_.begin(), text_.begin() + static_cast<long>(nul), '\n')),
           "wanted text; a byte here is zero");
}

void CalendarLines::refuse(int line, std::string wanted) {
  problems_.push_back({.file = file_, .line = line, .wanted = std::move(wanted)});
  failed_ = true;
}

bool CalendarLines::next(CalendarLine& line) {
  int number = 0;
  if (failed_ || !unfold(number)) return false;
  if (content_.size() > longest_calendar_line) {
    refuse(number, fmt::format("wanted lines of at most {} KiB", longest_calendar_line >> 10));
    return false;
  }
  auto read = parsed(content_, number);
  if (!read) {
    refuse(number, "wanted a line of an iCalendar file, such as \"DTSTART:20270405T183000Z\"");
    return false;
  }
  line = std::move(*read);
  return true;
}

/// Puts folded lines together and tells the number of the first; false at the end.
bool CalendarLines::unfold(int& line) {
  content_.clear();
  while (at_ < text_.size() && content_.empty()) {
    line = number_;
    content_ = std::string(physical());
    while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t')) {
      if (content_.size() > longest_calendar_line) return true;
      content_ += physical().substr(1);
    }
  }
  return !content_.empty();
}

std::string_view CalendarLines::physical() {
  const std::size_t end = std::min(text_.find('\n', at_), text_.size());
  std::string_view line = text_.substr(at_, end - at_);
  if (line.ends_with('\r')) line.remove_suffix(1);
  at_ = end + 1;
  ++number_;
  return line;
}

}  // namespace tackfree
