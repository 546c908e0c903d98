// CSV: steps, areas and shopping as tables for a spreadsheet.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <array>
#include <string>
#include <string_view>

namespace tackfree {

/// One row for each piece of work and each set-up and clean-up, in order of time; local times.
std::string steps_csv(const Plan& plan);
/// One row for each part, side and grain.
std::string areas_csv(const Plan& plan);
/// One row for each product and each other thing to have at hand.
std::string shopping_csv(const Plan& plan);

/// A table as a file of a folder.
struct CsvFile {
  const char* name;
  std::string (*text_of)(const Plan& plan);
};
inline constexpr std::array<CsvFile, 3> csv_files{
    {{"steps.csv", steps_csv}, {"areas.csv", areas_csv}, {"shopping.csv", shopping_csv}}};

/// A field of text by RFC 4180, cleaned, in quotes where it needs them. Text that a spreadsheet
/// would take for a formula has an apostrophe before it: what begins, blanks aside, with `=`, `+`,
/// `-`, `@` or their full-width forms. Tabs and line ends are blanks by then.
/// Source: OWASP, CSV injection (from memory).
std::string csv_text(std::string_view text);

}  // namespace tackfree
