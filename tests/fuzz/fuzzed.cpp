#include "fuzz/fuzzed.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

namespace tackfree::fuzz {

void must(bool holds, std::string_view what) {
  if (holds) return;
  std::fprintf(stderr, "must hold: %.*s\n", static_cast<int>(what.size()), what.data());
  std::abort();
}

void must_help(const Problems& problems, std::string_view file) {
  for (const Problem& problem : problems) {
    must(problem.file == file, "a problem names its file");
    must(problem.line >= 0, "a problem's line is one of the file");
    must(!problem.wanted.empty(), "a problem says what would be right");
    must(to_text(problem).size() < 10'000, "a problem fits a screen");
  }
}

}  // namespace tackfree::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  // Any byte may be looked at as a character.
  tackfree::fuzz::read({reinterpret_cast<const char*>(data), size});
  return 0;
}
