// CSV document: rows of text after one row of column heads, as spreadsheets write it, with lines.
#pragma once

#include "tackfree/base/problem.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// One row: as many fields as the head has, spaces around them taken off unless quoted.
struct CsvRow {
  int line = 0;  ///< on which the row begins, from 1
  std::vector<std::string> fields;
};

struct CsvDocument {
  char separator = ',';  ///< comma, semicolon or tab
  std::vector<std::string> head;
  std::vector<CsvRow> rows;

  /// The place of a column, by its head.
  std::optional<std::size_t> column(std::string_view head_name) const;
};

/// Most mistakes of one kind that are listed for one file; the rest are counted.
inline constexpr std::size_t most_listed_mistakes = 50;

/// Longer and wider tables are not read: three years of readings every five minutes have 315,000
/// rows.
inline constexpr std::size_t most_csv_rows = 320'000;
inline constexpr std::size_t most_csv_columns = 100;

/// The rows of `text`, RFC 4180: fields between separators, quoted fields with "" for a quote and
/// with line ends inside, LF or CRLF, UTF-8 with or without a byte-order mark. The separator is the
/// one that stands in the row of heads most often: comma, semicolon or tab. Empty rows, and empty
/// fields beyond the last head, are left out. A text that is no CSV at all is one Problem and
/// nothing; rows with too many or too few fields are Problems and left out.
std::optional<CsvDocument> parse_csv(std::string_view text, const std::string& file,
                                     Problems& problems);

/// A byte that text may not hold: its line, from 1, and what it is, as in "a NUL byte (0x00)".
struct NotText {
  int line = 1;
  std::string what;
};

/// The first byte of `text` that is not UTF-8, or that is a control character but tab and line
/// ends.
std::optional<NotText> first_not_text(std::string_view text);

}  // namespace tackfree
