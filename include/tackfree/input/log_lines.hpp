// Log lines: the format of the log, one JSON object a line, read whole and written one by one.
#pragma once

#include "tackfree/base/files.hpp"
#include "tackfree/model/history.hpp"

#include <string>

namespace tackfree {

/// The facts in `text`, whose times are shown as written. A line that cannot be read is left out,
/// with what is wrong with it; an empty line is passed over. A torn last line is kept aside, unless
/// it is whole but for its line feed. Corrected and withdrawn lines do not count.
History read_log(const AppendedText& text, const std::string& file);

/// Is this last line whole but for its line feed?
bool is_whole_log_line(const std::string& line);

/// The entry as one line, without a line feed; times in `zone` with their offset.
std::string log_line(const LogEntry& entry, const Zone& zone);

}  // namespace tackfree
