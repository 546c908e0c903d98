#include "tackfree/syntax/csv_document.hpp"

#include "tackfree/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Length of the UTF-8 character at the front of `text`; 0 when it is none that text may hold.
std::size_t character_length(std::string_view text) {
  if (text.empty()) return 0;
  const Utf8Character first = first_character(text);
  const bool control = (first.code < 0x20 || first.code == 0x7F) && first.code != '\t' &&
                       first.code != '\n' && first.code != '\r';
  return first.valid && !control ? first.bytes.size() : 0;
}

std::string word_for_byte(unsigned byte) {
  if (byte == 0) return "a NUL byte (0x00)";
  if (byte < 0x20 || byte == 0x7F) return fmt::format("the control character 0x{:02X}", byte);
  return fmt::format("the byte 0x{:02X}, which is no UTF-8", byte);
}

std::string trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \t");
  if (begin == std::string_view::npos) return {};
  return std::string(text.substr(begin, text.find_last_not_of(" \t") - begin + 1));
}

std::string_view separator_word(char separator) {
  if (separator == ';') return "a semicolon";
  return separator == '\t' ? "a tab" : "a comma";
}

/// The separator that stands outside quotes in the first row that is not empty most often; a comma
/// where none does.
char separator_of(std::string_view text) {
  constexpr std::array separators{',', ';', '\t'};
  std::array<std::size_t, separators.size()> counts{};
  bool quoted = false;
  for (const char sign : text.substr(std::min(text.find_first_not_of("\r\n"), text.size()))) {
    if (sign == '"') quoted = !quoted;
    if (quoted) continue;
    if (sign == '\r' || sign == '\n') break;
    for (std::size_t i = 0; i < separators.size(); ++i)
      if (sign == separators.at(i)) ++counts.at(i);
  }
  const auto most = std::max_element(counts.begin(), counts.end());
  return separators.at(static_cast<std::size_t>(most - counts.begin()));
}

/// Drops empty fields beyond `columns`, as spreadsheets leave them.
void drop_empty_tail(std::vector<std::string>& fields, std::size_t columns) {
  while (fields.size() > columns && fields.back().empty()) fields.pop_back();
}

/// Takes rows off the front of a text.
class CsvLexer {
 public:
  CsvLexer(std::string_view text, char separator, std::string file, Problems& problems)
      : text_(text), separator_(separator), file_(std::move(file)), problems_(problems) {
    ends_ += separator;
  }

  bool at_end() const { return text_.empty(); }

  /// The next row; nothing, with a Problem, where quotes are wrong: what follows cannot be trusted.
  std::optional<CsvRow> row() {
    CsvRow row{.line = line_, .fields = {}};
    while (true) {
      std::string field;
      if (!take_field(field)) return std::nullopt;
      row.fields.push_back(std::move(field));
      if (text_.empty()) return row;
      const char sign = text_.front();
      text_.remove_prefix(1);
      if (sign == '\r' && text_.starts_with('\n')) text_.remove_prefix(1);
      if (sign == separator_) continue;
      ++line_;
      return row;
    }
  }

 private:
  bool refuse(int line, std::string_view found, std::string_view wanted) {
    problems_.push_back({.file = file_,
                         .line = line,
                         .found = std::string(found.substr(0, 40)),
                         .wanted = std::string(wanted)});
    return false;
  }

  /// A tab between fields is no blank.
  void skip_blanks(std::string_view& text) const {
    const char* const blanks = separator_ == '\t' ? " " : " \t";
    text.remove_prefix(std::min(text.find_first_not_of(blanks), text.size()));
  }

  bool take_field(std::string& field) {
    std::string_view ahead = text_;
    skip_blanks(ahead);
    if (ahead.starts_with('"')) {
      text_ = ahead;
      return take_quoted(field);
    }
    const std::size_t end = std::min(text_.find_first_of(ends_), text_.size());
    field = trimmed(text_.substr(0, end));
    text_.remove_prefix(end);
    return true;
  }

  bool take_quoted(std::string& field) {
    const int opened = line_;
    const std::string_view whole = text_;
    text_.remove_prefix(1);
    while (true) {
      const std::size_t quote = text_.find('"');
      if (quote == std::string_view::npos)
        return refuse(opened, whole, "is a quoted field without its closing quote");
      const std::string_view piece = text_.substr(0, quote);
      line_ += static_cast<int>(std::count(piece.begin(), piece.end(), '\n'));
      field += piece;
      text_.remove_prefix(quote + 1);
      if (!text_.starts_with('"')) break;
      field += '"';
      text_.remove_prefix(1);
    }
    skip_blanks(text_);
    if (text_.empty() || ends_.find(text_.front()) != std::string::npos) return true;
    return refuse(line_, whole,
                  fmt::format("wanted {} after the closing quote; inside quotes, write \"\" for a "
                              "quote",
                              separator_word(separator_)));
  }

  std::string_view text_;
  char separator_;
  std::string ends_ = "\r\n";  ///< what ends a field that is not quoted
  std::string file_;
  Problems& problems_;
  int line_ = 1;
};

bool is_empty(const CsvRow& row) {
  return std::all_of(row.fields.begin(), row.fields.end(),
                     [](const std::string& field) { return field.empty(); });
}

bool check_head(const CsvRow& head, const std::string& file, Problems& problems) {
  const auto refuse = [&](std::string found, std::string wanted) {
    problems.push_back(
        {.file = file, .line = head.line, .found = std::move(found), .wanted = std::move(wanted)});
    return false;
  };
  if (head.fields.size() > most_csv_columns)
    return refuse({}, fmt::format("wanted at most {} columns", most_csv_columns));
  std::set<std::string> seen;
  for (const std::string& name : head.fields) {
    if (name.empty()) return refuse({}, "has a column without a head; wanted a head for each");
    if (!seen.insert(name).second) return refuse(name, "wanted each column head once");
  }
  return true;
}

}  // namespace

std::optional<std::size_t> CsvDocument::column(std::string_view head_name) const {
  const auto found = std::find(head.begin(), head.end(), head_name);
  if (found == head.end()) return std::nullopt;
  return static_cast<std::size_t>(found - head.begin());
}

std::optional<NotText> first_not_text(std::string_view text) {
  int line = 1;
  while (!text.empty()) {
    const std::size_t length = character_length(text);
    if (length == 0) return NotText{line, word_for_byte(static_cast<unsigned char>(text.front()))};
    if (text.front() == '\n') ++line;
    text.remove_prefix(length);
  }
  return std::nullopt;
}

std::optional<CsvDocument> parse_csv(std::string_view text, const std::string& file,
                                     Problems& problems) {
  if (const auto wrong = first_not_text(text)) {
    problems.push_back(
        {.file = file,
         .line = wrong->line,
         .wanted = fmt::format("has {}; wanted text, in a CSV file saved as UTF-8", wrong->what)});
    return std::nullopt;
  }
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  CsvDocument document;
  document.separator = separator_of(text);
  CsvLexer lexer(text, document.separator, file, problems);
  std::size_t uneven = 0;
  while (!lexer.at_end()) {
    auto row = lexer.row();
    if (!row) return std::nullopt;
    if (is_empty(*row)) continue;
    if (document.head.empty()) {
      drop_empty_tail(row->fields, 1);
      if (!check_head(*row, file, problems)) return std::nullopt;
      document.head = std::move(row->fields);
      continue;
    }
    drop_empty_tail(row->fields, document.head.size());
    if (document.rows.size() == most_csv_rows) {
      problems.push_back({.file = file,
                          .line = row->line,
                          .wanted = fmt::format("wanted at most {} rows", most_csv_rows),
                          .hint = "leave out rows that are not needed, such as years long past"});
      return std::nullopt;
    }
    if (row->fields.size() == document.head.size()) {
      document.rows.push_back(std::move(*row));
      continue;
    }
    if (++uneven <= most_listed_mistakes)
      problems.push_back(
          {.file = file,
           .line = row->line,
           .found = fmt::format("{} fields", row->fields.size()),
           .wanted = fmt::format("wanted {}, one for each column head", document.head.size()),
           .hint = fmt::format("put a field that holds {} in quotes",
                               separator_word(document.separator))});
  }
  if (uneven > most_listed_mistakes)
    problems.push_back({.file = file,
                        .wanted = fmt::format("has {} more rows with too many or too few fields",
                                              uneven - most_listed_mistakes)});
  if (document.head.empty()) {
    problems.push_back({.file = file, .wanted = "is empty; wanted a row of column heads"});
    return std::nullopt;
  }
  return document;
}

}  // namespace tackfree
