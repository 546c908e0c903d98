// How to: the foreman's lines for an operation, by its kind, its place in the system and its class.
#pragma once

#include "tackfree/model/finishing_data.hpp"
#include "tackfree/operations/operation.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// The lines for `operation` with `coating`. The first key found among the how-to texts counts:
/// `coat_first/CLASS` (or `coat_last/CLASS`), `coat/CLASS`, the same two with the class whose lines
/// it borrows, `coat_first` (or `coat_last`), `coat`; other kinds likewise, without first and last.
/// Empty when none is there. Only the coat on bare wood is a first one.
std::vector<std::string> how_to(const TradeTexts& texts, const Operation& operation,
                                const Coating& coating);

}  // namespace tackfree
