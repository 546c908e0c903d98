#include "tackfree/words/chart_words.hpp"

#include <fmt/format.h>

namespace tackfree {

std::string tenfold_mark(double value) {
  return value < 1 ? fmt::format("{:g}", value) : fmt::format("{:.0f}", value);
}

}  // namespace tackfree
