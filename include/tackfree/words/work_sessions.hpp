// Work sessions: the work in stretches without long breaks, each line what one person does to one
// piece.
#pragma once

#include "tackfree/words/short_warnings.hpp"
#include "tackfree/words/work_days.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// Breaks up to this long do not end a session. Assumed: lunch is shorter, the hours between an
/// early morning and an evening are longer.
inline constexpr Minutes longest_break{90};

/// One line of a session: the grits of one sanding of one piece together, and a coat together with
/// the dusting off right before it.
struct WorkLine {
  Interval time;  ///< from the begin of the first to the end of the last
  Minutes work{0};
  std::optional<std::size_t> who;       ///< a person, where there are several
  std::string what;                     ///< without the person
  std::vector<const DatedStep*> steps;  ///< in order; empty for set-up and clean-up
  const Session* session = nullptr;     ///< of set-up and clean-up
  bool first_piece = true;              ///< of its first step
};

struct WorkSession {
  Interval time;
  Minutes work{0};                        ///< of all people together
  std::size_t people{1};                  ///< that work in it
  bool typical = false;                   ///< rests on air that is typical, not forecast
  std::vector<WorkLine> lines;            ///< each person's in order of time, person by person
  std::vector<AiringSpan> airing;         ///< that begin with it, and what goes on from them
  std::vector<AiringSpan> better_airing;  ///< the same by the better habit, where there is one
};

/// Every session to come or going on, in order of time; none reaches into the day after it begins.
/// `plan` must outlive the result.
std::vector<WorkSession> work_sessions(const Plan& plan, const StepWords& words);

/// `Fri Apr 9, 6:30 to 8:55 pm: 2 h 5 min of work`.
std::string session_title(const WorkSession& session, const Figures& figures);

/// What is done to which pieces, for people who want no more than a line or two:
/// `Sand bare wood, P150 to P220: frame. Coat 1 of 3: seat (back); frame.` What does not fit into
/// `columns` is counted; each coat counts before other work.
std::string session_summary(const WorkSession& session, const Plan& plan, const StepWords& words,
                            std::size_t columns);

/// A warning and the line beside which it belongs.
struct LineWarning {
  std::size_t line = 0;  ///< index into WorkSession::lines
  ShortWarning warning;
};

/// At the first coat of a tin: what must be off, and what comes first of its coating's cautions. At
/// the last work that leaves oily rags: what to do with them.
std::vector<LineWarning> warnings_of(const WorkSession& session, const Plan& plan);

}  // namespace tackfree
