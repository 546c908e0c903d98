// Ready words: when the work is ready, the one thing that holds it up, and what is proved of that.
#pragma once

#include "tackfree/words/step_words.hpp"

#include <string>

namespace tackfree {

/// `Mon May 3, 7:00 am, for light use. Hardware: Sat May 8. Fully cured: Thu Jun 3.`
std::string ready_words(const Plan& plan, const Figures& figures);

/// The longest wait of those that decide the date: `it is too cold to coat seat until Wed Apr 14
/// (4.2 days).` Empty where none is as long as a day.
std::string holding_words(const Plan& plan, const StepWords& words);

/// `Nothing faster is possible with your hours in this weather (proved).` Empty where nothing is
/// proved.
std::string proof_words(const Plan& plan, const Figures& figures);

/// `Since the plan of Thu Apr 8, 5:45 pm: ready 2 days later, 7 steps moved.` Empty without a last
/// plan.
std::string moved_words(const Plan& plan, const Figures& figures);

}  // namespace tackfree
