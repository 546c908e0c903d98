// Hard-after words: what a coating bears how long after its last coat, by its own figures.
#pragma once

#include "tackfree/model/coating.hpp"

#include <string>

namespace tackfree {

/// `varnish, in the label's air: ready for hardware after 3 days, for stacking with paper after 7
/// days.` Empty where it has none of these figures. May hold the coating's name as it was written.
std::string hard_after_words(const Coating& coating);

}  // namespace tackfree
