// Day cards: sessions with boxes to tick, the how-to inside its step, on paper room for readings.
#pragma once

#include "tackfree/html/markup.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// One block a session, which paper keeps together. A step's whole row is its box to tick.
void write_day_cards(Markup& html, const Plan& plan, const StepWords& words, const HowTo& how_to);

}  // namespace tackfree
