#include "tackfree/words/air_words.hpp"

#include <fmt/format.h>

namespace tackfree {

std::string source_words(const NamedSource& source) {
  if (!source.name.empty() || source.typical_month == 0) return source.name;
  return fmt::format("typical {} values", month_name(source.typical_month));
}

}  // namespace tackfree
