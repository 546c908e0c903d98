// Remedy words: what would give a step a date, and the key that says so in the job.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/step_words.hpp"

#include <string>

namespace tackfree {

/// `The room 7 °C warmer from Sat 16 Jan, 07:00 until Sun 17 Jan, 09:00: coat 1 of 2 then goes on
/// Sat 16 Jan, 10:00. Other steps still find no time.`
std::string remedy_words(const Remedy& remedy, const Plan& plan, const StepWords& words);

/// What to write into the job, as JSON: `"calendar": {"added": [{"on": ..., "hours": [...]}]}`.
std::string remedy_key(const Remedy& remedy, const Plan& plan);

/// How the room is not to be warmed; empty where no remedy of the plan warms it.
std::string warming_words(const Plan& plan);

}  // namespace tackfree
