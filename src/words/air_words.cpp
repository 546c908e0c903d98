#include "tackfree/words/air_words.hpp"

#include <fmt/format.h>

namespace tackfree {

std::string source_words(const NamedSource& source) {
  if (!source.name.empty() || source.typical_month == 0) return source.name;
  return fmt::format("typical {} values", month_name(source.typical_month));
}

std::string held_month_words(const HeldMonth& held) {
  return fmt::format("{} has no typical values of its own: the plan uses those of {} for it.",
                     month_name(held.month), month_name(held.held));
}

}  // namespace tackfree
