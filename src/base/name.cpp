#include "tackfree/base/name.hpp"

#include <algorithm>
#include <cctype>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t longest_compared = 80;

std::string lower(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(), [](char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  });
  return result;
}

/// Edits between two texts; a swap of neighbours is one edit (optimal string alignment distance).
std::size_t edits_between(const std::string& a, const std::string& b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before = last;
    last = row;
  }
  return last[b.size()];
}

}  // namespace

std::optional<std::string> nearest_name(std::string_view typed,
                                        std::span<const std::string> known) {
  if (typed.empty() || typed.size() > longest_compared) return std::nullopt;
  const std::string wanted = lower(typed);
  std::optional<std::string> best;
  std::size_t fewest = 0;
  for (const std::string& name : known) {
    if (name.size() > longest_compared) continue;
    const std::size_t edits = edits_between(wanted, lower(name));
    const std::size_t allowed = std::max(wanted.size(), name.size()) / 3;
    if (edits <= allowed && (!best || edits < fewest)) {
      best = name;
      fewest = edits;
    }
  }
  return best;
}

std::string name_hint(std::string_view typed, std::span<const std::string> known) {
  if (auto near = nearest_name(typed, known)) return fmt::format("did you mean \"{}\"?", *near);
  if (known.empty()) return "none are known here";
  constexpr std::size_t most_listed = 30;
  const std::size_t listed = std::min(known.size(), most_listed);
  std::string text = fmt::format(
      "known: {}",
      fmt::join(known.begin(), known.begin() + static_cast<std::ptrdiff_t>(listed), ", "));
  if (listed < known.size()) text += ", ...";
  return text;
}

std::string slug(std::string_view text) {
  std::string result;
  for (char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (std::isalnum(byte) != 0 && byte < 0x80) {
      result += static_cast<char>(std::tolower(byte));
    } else if (byte >= 0x80) {
      result += fmt::format("{:02x}", byte);
    } else if (!result.empty() && result.back() != '-') {
      result += '-';
    }
  }
  while (!result.empty() && result.back() == '-') result.pop_back();
  return result.empty() ? "x" : result;
}

}  // namespace tackfree
