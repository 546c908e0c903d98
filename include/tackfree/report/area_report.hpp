// Area report: square metres, tape and notes alone, as text and as JSON.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/report/text_page.hpp"

#include <string>

namespace tackfree {

/// The areas of a plan by grain and by side, for a terminal of `columns` (40 to 200).
std::string area_text(const Plan& plan, int columns = 80, Ink ink = Ink::plain);

/// The same as docs/area.schema.json describes it: version key `tackfree_area`, indented by two,
/// with a final newline.
std::string area_json(const Plan& plan);

}  // namespace tackfree
