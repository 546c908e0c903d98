#include "tackfree/words/tool_rest_words.hpp"

#include <string_view>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string_view tool_word(Tool tool) {
  switch (tool) {
    case Tool::brush:
      break;
    case Tool::roller:
      return "roller";
    case Tool::gun:
      return "gun";
    case Tool::cloth:
      return "cloth";
  }
  return "brush";
}

}  // namespace

std::string tool_rest_words(const ToolRest& rest) {
  const double wait = to_duration(rest.pause.length()).in(hours);
  if (rest.wrapped)
    return fmt::format("Wrap the {} airtight: its next coat is {:.1f} h off, and it would dry.",
                       tool_word(rest.tool), wait);
  if (rest.tool == Tool::cloth)
    return fmt::format(
        "Take a new cloth for the next coat, {:.1f} h from now; this one goes where used cloths "
        "go.",
        wait);
  return fmt::format("Clean the {} now{}: its next coat is {:.1f} h off, and {}.",
                     tool_word(rest.tool),
                     rest.tool == Tool::roller ? ", and take a new sleeve then" : "", wait,
                     rest.tool == Tool::gun ? "what is left in it thickens" : "it would harden");
}

}  // namespace tackfree
