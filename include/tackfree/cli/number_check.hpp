// Number check: plain digits within a range, or what is wrong, for numbers on the command line.
#pragma once

#include <string>
#include <string_view>

namespace tackfree {

/// The numbers that an option takes, ends included.
struct OptionRange {
  double least = 0;
  double most = 0;
  bool whole = false;
};

/// `found "nan"; wanted a number from 0.001 to 1000, such as 0.35`; empty for a number in the
/// range. Digits, a sign and a point make a number; no exponent, hexadecimal digit, nan or inf.
std::string number_fault(std::string_view text, const OptionRange& range);

}  // namespace tackfree
