// Parts row: the fields of one row of a parts list, read by column and checked one by one.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/base/units.hpp"
#include "tackfree/syntax/csv_document.hpp"

#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>

namespace tackfree {

/// Where each known column stands, and the unit its head names.
class PartsColumns {
 public:
  struct Column {
    std::size_t place = 0;
    std::string head;
    std::optional<Unit<LengthKind>> unit;
    std::optional<Unit<AreaKind>> area_unit;
  };

  /// Nothing, with Problems, when a column is unknown or a needed one is missing. Case, blanks and
  /// brackets in heads do not matter: `Length (mm)` is `length_mm`.
  static std::optional<PartsColumns> in(const CsvDocument& document, const std::string& file,
                                        Problems& problems);

  const Column* find(std::string_view name) const;
  const std::map<std::string, Column, std::less<>>& all() const { return columns_; }
  /// Whether measures have decimal commas: a list whose separator is a semicolon.
  bool decimal_comma() const { return decimal_comma_; }

 private:
  std::map<std::string, Column, std::less<>> columns_;
  bool decimal_comma_ = false;
};

/// One row. A reading that fails adds a Problem and marks the row as bad.
class PartsRow {
 public:
  PartsRow(const CsvRow& row, const PartsColumns& columns, std::string file, Problems& problems)
      : row_(row), columns_(columns), file_(std::move(file)), problems_(problems) {}

  int line() const { return row_.line; }
  bool good() const { return good_; }

  /// The field's text; empty when the field or its column is.
  std::string text(std::string_view column);
  std::string needed_text(std::string_view column, std::string_view wanted);
  Length needed_length(std::string_view column);
  std::optional<Length> length(std::string_view column);
  Area needed_area(std::string_view column);
  /// A plain number within the range, ends included; a Problem when there is none.
  double needed_number(std::string_view column, double least, double most);
  /// A whole number from 1 to 100 000; 1 when empty.
  int quantity() { return whole("quantity"); }
  int whole(std::string_view column);
  bool yes_no(std::string_view column, bool when_empty);
  /// One of `words`, as its index; case does not matter.
  std::size_t word(std::string_view column, std::span<const std::string_view> words,
                   std::size_t when_empty);
  /// Reports fields that are filled and were not asked for: this kind of row has no use for them.
  void refuse_unused(std::string_view kind);

  void report(std::string_view column, std::string wanted, std::string hint = {});

 private:
  /// The field with a decimal point; nothing, with a Problem, when it can be read two ways.
  std::optional<std::string> measure(std::string_view column);

  const CsvRow& row_;
  const PartsColumns& columns_;
  std::string file_;
  Problems& problems_;
  std::set<std::string, std::less<>> asked_;
  bool good_ = true;
};

/// In small letters, as words of a list are compared.
std::string small_letters(std::string text);

}  // namespace tackfree
