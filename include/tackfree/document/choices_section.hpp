// Choices section: dates against sessions, as a table.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/plan/choices.hpp"

namespace tackfree {

/// A line for each choice, what one step to fewer sessions costs, and how to choose.
void write_choices(Page& page, const Choices& choices);

}  // namespace tackfree
