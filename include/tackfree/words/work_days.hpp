// Work days: the person's own work, day by day and piece by piece, set-up and clean-up with it.
#pragma once

#include "tackfree/words/step_words.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// One stretch of work.
struct WorkEntry {
  Interval time;
  std::string what;                     ///< may hold words as the person wrote them
  std::string task = {};                ///< the same without the person who does it
  std::optional<std::size_t> who = {};  ///< a person, where there are several
  const DatedStep* step = nullptr;      ///< nothing for set-up and clean-up
  const Session* session = nullptr;     ///< of set-up and clean-up
  bool first_piece = true;              ///< of its step
};

struct WorkDay {
  Date on;
  Minutes work{0};       ///< of the entries that begin on this day
  bool typical = false;  ///< rests on air that is typical, not forecast
  std::vector<WorkEntry> entries;
  std::vector<AiringSpan> airing;         ///< that begin on this day, and what goes on from them
  std::vector<AiringSpan> better_airing;  ///< the same by the better habit, where there is one
};

/// `sand bare`, `coat`, `set up`, ...
std::string_view words_for(KindOfWork kind);

/// Every local day with work to come, in order. `plan` must outlive the result.
std::vector<WorkDay> work_days(const Plan& plan, const StepWords& words);

}  // namespace tackfree
