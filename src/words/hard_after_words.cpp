#include "tackfree/words/hard_after_words.hpp"

#include "tackfree/words/display_text.hpp"
#include "tackfree/words/figures.hpp"
#include "tackfree/words/step_words.hpp"

#include <array>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

std::string hard_after_words(const Coating& coating) {
  constexpr std::array<std::pair<Stage, std::string_view>, 3> uses{
      {{Stage::hardware, "hardware and doors on their stops"},
       {Stage::stack, "stacking with paper"},
       {Stage::full_cure, "things left standing on it"}}};
  std::vector<std::string> parts;
  for (const auto& [stage, use] : uses)
    if (const auto& after = coating.label_after.at(index_of(stage)))
      parts.push_back(fmt::format("{} after {}", use, wait_text(after->value)));
  if (parts.empty()) return {};
  return fmt::format("{}, in the label's air: {}.", cut_to(longest_name, coating.name),
                     fmt::join(parts, ", "));
}

}  // namespace tackfree
