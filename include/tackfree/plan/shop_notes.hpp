// Shop notes: batches in lots, pins that hold nothing, and what several people leave unproved.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <vector>

namespace tackfree {

/// What the person should know about rooms, people and set dates in this plan.
std::vector<Note> shop_notes(const Plan& plan);

}  // namespace tackfree
