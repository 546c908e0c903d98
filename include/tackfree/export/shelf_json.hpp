// Shelf JSON: the file of shared tins, one tin a line.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/model/shelf.hpp"

#include <string>

namespace tackfree {

/// The text that parse_shelf reads as `shelf`. Amounts that were written stay as they were; new
/// ones are in `units`, what is in a tin rounded down, what was taken up.
std::string shelf_json(const Shelf& shelf, UnitSystem units);

}  // namespace tackfree
