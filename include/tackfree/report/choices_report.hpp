// Choices report: dates against sessions, as a table and as JSON.
#pragma once

#include "tackfree/plan/choices.hpp"
#include "tackfree/report/text_page.hpp"

#include <string>

namespace tackfree {

/// A line for each choice, what one step to fewer sessions costs, and how to choose, for a terminal
/// of `columns` (40 to 200).
std::string choices_text(const Choices& choices, int columns = 80, Ink ink = Ink::plain);

/// The same as docs/choices.schema.json describes it: version key `tackfree_choices`, indented by
/// two, with a final newline.
std::string choices_json(const Choices& choices);

}  // namespace tackfree
