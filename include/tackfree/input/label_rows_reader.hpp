// Label rows reader: the table of drying hours at several temperatures that some labels have.
#pragma once

#include "tackfree/input/coating_figures.hpp"
#include "tackfree/model/coating.hpp"
#include "tackfree/syntax/json_cursor.hpp"

namespace tackfree {

/// Reads `at_temperatures` of a coating's label, one object a row: `temp_c` or `temp_f` and hours
/// or days under the keys of the stages. Each stage with rows takes the hours of the row nearest to
/// the label's temperature as its time, and is marked in `given`. Fewer than two rows for a stage,
/// two at one temperature, and hours that fall with falling temperature are Problems.
void read_label_rows(JsonCursor& label, Coating& coating, StagesGiven& given);

}  // namespace tackfree
