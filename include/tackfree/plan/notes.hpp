// Notes: what the person should know about a plan, from films too thin to boards that may cup.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <vector>

namespace tackfree {

/// Warnings and remarks, in the order of the pipeline. Reads everything but the notes.
std::vector<Note> notes(const Plan& plan);

}  // namespace tackfree
