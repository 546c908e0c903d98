// Log: any text as a log; each line that is read is written, and read again as the same.

#include "tackfree/input/log_lines.hpp"

#include "fuzz/fuzzed.hpp"

namespace {

/// The text as a file holds it: whole lines, and what stands behind the last line feed.
tackfree::AppendedText appended(std::string_view text) {
  const std::size_t end = text.rfind('\n') + 1;
  return {std::string(text.substr(0, end)), std::string(text.substr(end))};
}

}  // namespace

void tackfree::fuzz::read(std::string_view text) {
  static const Zone zone = Zone::named("America/New_York").value();
  const History history = read_log(appended(text), "a.log.jsonl");
  for (const LeftOutLine& line : history.left_out) must_help(line.why, "a.log.jsonl");
  for (LogEntry entry : history.entries) {
    // Alone it has no line above it that it could correct.
    entry.corrects.reset();
    const std::string line = log_line(entry, zone);
    must(line.find('\n') == std::string::npos, "an entry is one line");
    must(is_whole_log_line(line), "a line that was written is whole");
    const History again = read_log({line + "\n", ""}, "a.log.jsonl");
    must(again.left_out.empty() && again.entries.size() == 1,
         "a line that was written can be read");
    must(log_line(again.entries.front(), zone) == line, "an entry is read as it was written");
    must(again.entries.front().at == entry.at && again.entries.front().note == entry.note,
         "an entry keeps its time and its words");
  }
}
