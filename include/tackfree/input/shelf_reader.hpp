// Shelf reader: the file of tins that several jobs share.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/finishing_data.hpp"
#include "tackfree/model/shelf.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// The shelf in `text`; one without tins where the text is blank, as that of a file that is not
/// there yet. Nothing, with every Problem, where anything is wrong. Its keys are described in
/// docs/file_formats.md.
std::optional<Shelf> parse_shelf(std::string_view text, const std::string& file,
                                 const FinishingData& data, Problems& problems);

}  // namespace tackfree
