// Text days: what to do next, day by day, and when the finish will bear what.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// That the word before what to know first takes at least: `Next`, `Ready`, `Buy`.
inline constexpr std::size_t first_columns = 5;

/// Name and note of the job, and the time it is planned from.
void write_title(Page& page, const Plan& plan, const Figures& figures);

/// The time it is planned from.
void write_as_of(Page& page, const Plan& plan, const Figures& figures);

/// How much stands at each step: the one reason that binds, or every reason with where its figures
/// come from and the number of its how-to text.
enum class DayDetail { plain, full };

/// A block for each session: how to air, a line for each piece of work, person by person, and below
/// it its warnings, what to pour and why it waited.
void write_days(Page& page, const Plan& plan, const StepWords& words, const HowTo& how_to,
                DayDetail detail = DayDetail::full);

/// What is due when, and what is late by how much. Nothing where nothing is due.
void write_due_dates(Page& page, const Plan& plan, const StepWords& words);

/// For each batch the day on which it may be moved, used, fitted, stacked, and is cured.
void write_milestones(Page& page, const Plan& plan, const StepWords& words);

}  // namespace tackfree
