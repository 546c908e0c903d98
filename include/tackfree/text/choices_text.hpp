// Choices text: dates against sessions, as a table for a terminal.
#pragma once

#include "tackfree/plan/choices.hpp"
#include "tackfree/text/text_page.hpp"

#include <string>

namespace tackfree {

/// A line for each choice, what one step to fewer sessions costs, and how to choose, for a terminal
/// of `columns` (40 to 200).
std::string choices_text(const Choices& choices, int columns = 80, Ink ink = Ink::plain);

}  // namespace tackfree
