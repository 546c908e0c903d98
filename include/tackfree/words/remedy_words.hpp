// Remedy words: what would give a step a date, and the key that says so in the job.
#pragma once

#include "tackfree/words/step_words.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// `The room 7 °C warmer from Sat 16 Jan, 07:00 until Sun 17 Jan, 09:00: coat 1 of 2 then goes on
/// Sat 16 Jan, 10:00. Other steps still find no time.`
std::string remedy_words(const Remedy& remedy, const DatedWork& work, const WorkWords& words);

/// What to write into the job, as JSON: `"calendar": {"added": [{"on": ..., "hours": [...]}]}`.
std::string remedy_key(const Remedy& remedy, const Job& job);

/// How the room is not to be warmed; empty where no remedy warms it.
std::string warming_words(const std::vector<Remedy>& remedies);

}  // namespace tackfree
