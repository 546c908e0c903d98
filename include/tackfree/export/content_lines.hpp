// Content lines: lines of an iCalendar file as RFC 5545 writes them, folded and escaped.
#pragma once

#include "tackfree/base/time.hpp"

#include <string>
#include <string_view>

namespace tackfree {

/// One content line, folded to at most 75 octets between characters, each part ended by CRLF.
/// Source: RFC 5545, section 3.1.
std::string folded(std::string_view content_line);

/// Cleaned text with backslash, semicolon, comma and line ends escaped; line ends stay line ends.
/// Source: RFC 5545, section 3.3.11.
std::string escaped_text(std::string_view text);

/// A property whose value is text, whoever wrote it: a person, or a file of a last plan.
std::string property(std::string_view name, std::string_view text);

/// `20270410T223000Z`
std::string utc_form(Instant at);

}  // namespace tackfree
