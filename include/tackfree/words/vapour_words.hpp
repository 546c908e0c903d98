// Vapour words: openings, habits and the judgement of the room in sentences.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// `closed`, `ajar to outdoors`, `open to outdoors`, `open to outdoors and fan on`.
std::string_view words_for(Opening opening);

/// `open to outdoors while coating, then ajar for 4 h`.
std::string words_for(const AiringHabit& habit);

/// The habit as it is written in a job file: `"while_coating": "open", "after": ...`.
std::string job_text(const AiringHabit& habit);

/// What must be off before a tin that gives off flammable vapour is opened, by name: what the job
/// lists, and its heater unless it is sealed.
std::vector<std::string> to_switch_off(const Job& job);

/// `12 %`, one digit below 1 %, `under 0.1 %` below that.
std::string share_text(double share);
/// `3.2 times`, `0.4 times`, `under 0.01 times`.
std::string times_text(double times);

/// ` (formaldehyde not counted)`: what belongs into every sentence that sets vapour against limits;
/// empty where all is counted.
std::string uncounted_clause(const RoomJudgement& room);

/// The same as a sentence of its own, with what follows from it; begins with a blank.
std::string uncounted_sentence(const RoomJudgement& room);

/// What the estimate comes to, one or two sentences that begin with a blank.
std::string vapour_estimate(const RoomJudgement& room);

/// What to do about it, most urgent first, ending in a blank; empty when half of no limit is
/// reached.
std::string vapour_remedy(const RoomJudgement& room, const Figures& figures);

}  // namespace tackfree
