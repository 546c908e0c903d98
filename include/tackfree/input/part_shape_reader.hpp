// Part shape reader: one row of the parts list that is a part, by its kind.
#pragma once

#include "tackfree/input/parts_row.hpp"
#include "tackfree/model/part.hpp"

#include <array>
#include <string_view>

namespace tackfree {

/// The kinds of part, as the column `kind` names them.
inline constexpr std::array<std::string_view, 8> part_kinds{"board",  "sheet",  "round",  "tube",
                                                            "turned", "framed", "louvre", "area"};

/// The part in a row of kind `part_kinds[kind]`. Sizes that cannot be are Problems; the part is
/// there all the same, so that its features are judged by its name.
Part read_part(PartsRow& row, std::size_t kind);

}  // namespace tackfree
