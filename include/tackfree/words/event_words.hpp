// Event words: what each event of a plan says in a calendar.
#pragma once

#include "tackfree/plan/calendar_events.hpp"
#include "tackfree/words/step_words.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace tackfree {

/// As a phone shows it on a line or two.
inline constexpr std::size_t longest_summary = 80;

struct EventWords {
  std::string summary;             ///< clean, at most `longest_summary` columns
  std::vector<std::string> lines;  ///< the description, not clean yet
};

EventWords event_words(const Plan& plan, const StepWords& words, const CalendarEvent& event);

}  // namespace tackfree
