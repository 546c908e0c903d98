// Part notes: what the person should know about the parts list: boards that cup, areas estimated.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <vector>

namespace tackfree {

/// Rule 9: a wide solid board coated on one face only cups. And which areas are estimating
/// allowances, not geometry.
std::vector<Note> part_notes(const Job& job);

}  // namespace tackfree
