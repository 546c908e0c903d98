// Area text: square metres, tape and notes alone, for a terminal.
#pragma once

#include "tackfree/plan/areas.hpp"
#include "tackfree/text/text_page.hpp"

#include <string>

namespace tackfree {

/// Areas by grain and by side, for a terminal of `columns` (40 to 200).
std::string area_text(const Areas& areas, int columns = 80, Ink ink = Ink::plain);

}  // namespace tackfree
