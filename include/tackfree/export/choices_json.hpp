// JSON choices: dates against sessions.
#pragma once

#include "tackfree/plan/choices.hpp"

#include <string>

namespace tackfree {

/// The choices as docs/choices.schema.json describes them: version key `tackfree_choices`, indented
/// by two, with a final newline.
std::string choices_json(const Choices& choices);

}  // namespace tackfree
