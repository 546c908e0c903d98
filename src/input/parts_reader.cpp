#include "tackfree/input/parts_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/names_of.hpp"
#include "tackfree/input/part_feature_reader.hpp"
#include "tackfree/input/part_shape_reader.hpp"
#include "tackfree/input/parts_row.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The row_kinds of row: those of parts, then those of features.
constexpr auto row_kinds = [] {
  std::array<std::string_view, part_kinds.size() + feature_kinds.size()> all;
  std::copy(part_kinds.begin(), part_kinds.end(), all.begin());
  std::copy(feature_kinds.begin(), feature_kinds.end(), all.begin() + part_kinds.size());
  return all;
}();

/// A feature row waits here until every part is known.
struct WaitingFeature {
  PartsRow row;
  PartFeature feature;
};

/// The rows of one parts list, read one by one.
class PartsList {
 public:
  PartsList(const PartsColumns& columns, const std::string& file, Problems& problems)
      : columns_(columns), file_(file), problems_(problems), before_(problems.size()) {}

  void add(const CsvRow& fields) {
    if (is_full(fields.line)) return;
    PartsRow row(fields, columns_, file_, problems_);
    if (row.needed_text("kind", "board, sheet, round, cut-out or another kind of row").empty())
      return;
    const std::size_t kind = row.word("kind", row_kinds, row_kinds.size());
    if (kind == row_kinds.size()) return;
    if (kind < part_kinds.size()) return add_part(row, kind);
    PartFeature feature = read_feature(row, kind - part_kinds.size());
    if (row.good()) features_.push_back({std::move(row), std::move(feature)});
  }

  std::vector<Part> result() {
    for (WaitingFeature& each : features_) {
      if (is_full(each.row.line())) break;
      fit(each);
    }
    for (const Part& part : parts_) {
      if (is_full(part.line)) break;
      check_features(part, file_, problems_);
    }
    return std::move(parts_);
  }

 private:
  /// Whether there are so many mistakes already that more would help nobody; says so once.
  bool is_full(int line) {
    if (problems_.size() - before_ <= most_listed_mistakes) return false;
    if (!said_full_)
      problems_.push_back(
          {.file = file_, .line = line, .wanted = "has too many mistakes; mend these first"});
    said_full_ = true;
    return true;
  }

  void add_part(PartsRow& row, std::size_t kind) {
    Part part = read_part(row, kind);
    const auto [first, is_new] = places_.emplace(part.name, parts_.size());
    if (!is_new && !part.name.empty())
      row.report("part", fmt::format("wanted a name of its own; line {} has it too",
                                     parts_[first->second].line));
    // A part with a fault stays in the list, so that its features are judged by its name.
    if (is_new) parts_.push_back(std::move(part));
  }

  void fit(WaitingFeature& each) {
    const auto place = places_.find(each.feature.part);
    if (place == places_.end())
      each.row.report("part", "wanted the name of a part in this list",
                      name_hint(each.feature.part, names_of(parts_, &Part::name)));
    else
      fit_feature(each.row, std::move(each.feature), parts_[place->second]);
  }

  const PartsColumns& columns_;
  const std::string& file_;
  Problems& problems_;
  std::size_t before_;
  bool said_full_ = false;
  std::vector<Part> parts_;
  std::map<std::string, std::size_t, std::less<>> places_;  ///< of the parts in the list, by name
  std::vector<WaitingFeature> features_;
};

}  // namespace

std::vector<Part> parse_parts(std::string_view text, const std::string& file, Problems& problems) {
  std::vector<Part> parts;
  const auto document = parse_csv(text, file, problems);
  if (!document) return parts;
  const auto columns = PartsColumns::in(*document, file, problems);
  if (!columns) return parts;
  if (document->rows.size() > most_parts_rows) {
    problems.push_back({.file = file,
                        .line = document->rows[most_parts_rows].line,
                        .wanted = fmt::format("wanted at most {} rows", most_parts_rows),
                        .hint = "give parts that are alike one row, with their \"quantity\""});
    return parts;
  }
  PartsList list(*columns, file, problems);
  for (const CsvRow& fields : document->rows) list.add(fields);
  parts = list.result();
  if (document->rows.empty())
    problems.push_back({.file = file, .wanted = "has no parts; wanted at least one row"});
  return parts;
}

}  // namespace tackfree
