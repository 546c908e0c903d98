#include "tackfree/cli/plan_part.hpp"

#include "tackfree/base/name.hpp"

#include <algorithm>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

std::optional<PlanPart> plan_part_of(const std::string& word) {
  const auto found = std::ranges::find(plan_part_words, word);
  if (found == plan_part_words.end()) return std::nullopt;
  return static_cast<PlanPart>(found - plan_part_words.begin());
}

std::string plan_part_fault(const std::string& word) {
  if (plan_part_of(word)) return {};
  const std::vector<std::string> parts{plan_part_words.begin(), plan_part_words.end()};
  const std::string hint = name_hint(word, parts);
  return fmt::format("no part of a plan is called \"{}\"; its parts are {}{}", word,
                     fmt::join(parts, ", "), hint.empty() ? "" : "; " + hint);
}

}  // namespace tackfree
