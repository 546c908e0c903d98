// Screens: tonight, choices, the outlook of a coat, the shelf and the log as lines for a terminal.
#pragma once

#include "tackfree/evening/log_entry.hpp"
#include "tackfree/evening/tonight.hpp"
#include "tackfree/plan/choices.hpp"
#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/text/text_page.hpp"

#include <string>

namespace tackfree {

/// Each for a terminal of `columns` (40 to 200), as the section of that name has it.
std::string tonight_text(const Plan& plan, const Tonight& tonight, int columns = 80,
                         Ink ink = Ink::plain);
std::string choices_text(const Choices& choices, int columns = 80, Ink ink = Ink::plain);
std::string outlook_text(const Job& job, const CoatOutlook& outlook, int columns = 80,
                         Ink ink = Ink::plain);
std::string shelf_text(const WorkAtHand& work, int columns = 80, Ink ink = Ink::plain);
std::string understood_text(const UnderstoodReport& told, int columns = 80);
std::string log_text(const Job& job, int columns = 80);

}  // namespace tackfree
