// Parts: any text as a parts list.

#include "tackfree/input/parts_reader.hpp"

#include "fuzz/fuzzed.hpp"

void tackfree::fuzz::read(std::string_view text) {
  Problems problems;
  const auto parts = parse_parts(text, "parts.csv", problems);
  must_help(problems, "parts.csv");
  must(!parts.empty() || !problems.empty(), "no parts is a problem");
  for (const Part& part : parts)
    must(problems.size() || (part.quantity > 0 && !part.name.empty()),
         "a part is named, and there");
}
