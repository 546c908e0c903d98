// Work entries: the person's own work piece by piece, set-up and clean-up with it, and its titles.
#pragma once

#include "tackfree/schedule/work_sessions.hpp"
#include "tackfree/words/step_words.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// One stretch of work.
struct WorkEntry {
  Interval time;
  std::string what;                 ///< may hold words as the person wrote them
  const DatedStep* step = nullptr;  ///< nothing for set-up and clean-up
  bool first_piece = true;          ///< of its step
};

/// `sand bare`, `coat`, `set up`, ...
std::string_view words_for(KindOfWork kind);

/// `set up: varnish, brush`, `clean up: ...`, or the cleaning between two coats; of a task of
/// tools.
std::string tools_words(const Plan& plan, const WorkTask& tools);

/// The air's temperature at a coat, the portions in which it is put on and wiped off, and what it
/// is bound to: `, at 59 °F; only in a booth, on supplied air`.
std::string coat_conditions(const Plan& plan, const StepWords& words, const DatedStep& coat);

/// The full title, for a coat with its conditions, for one of several pieces with which:
/// `seat: sand bare wood, P120 (1 of 2)`.
std::string step_title(const Plan& plan, const StepWords& words, const DatedStep& step,
                       std::optional<std::size_t> piece);

/// All work to come in order of time. `plan` must outlive the result.
std::vector<WorkEntry> work_entries(const Plan& plan, const StepWords& words);

}  // namespace tackfree
