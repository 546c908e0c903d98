// Work sessions: stretches of work without long breaks, a line for what is done to each piece.
#pragma once

#include "tackfree/schedule/work_sessions.hpp"
#include "tackfree/words/short_warnings.hpp"
#include "tackfree/words/work_entries.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

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

struct SessionLines {
  Interval time;
  Minutes work{0};                        ///< of all people together
  std::size_t people{1};                  ///< that work in it
  bool typical = false;                   ///< rests on air that is typical, not forecast
  std::vector<WorkLine> lines;            ///< each person's in order of time, person by person
  std::vector<AiringSpan> airing;         ///< that begin with it, and what goes on from them
  std::vector<AiringSpan> better_airing;  ///< the same by the better habit, where there is one
};

/// Every session to come or going on, in order of time; as `work_sessions` splits them.
/// `plan` must outlive the result.
std::vector<SessionLines> session_lines(const Plan& plan, const StepWords& words);

/// `Fri Apr 9, 6:30 to 8:55 pm: 2 h 5 min of work`.
std::string session_heading(const SessionLines& session, const Figures& figures);

/// What is done to which pieces, for people who want no more than a line or two:
/// `Sand bare wood, P150 to P220: frame. Coat 1 of 3: seat (back); frame.` What does not fit into
/// `columns` is counted; each coat counts before other work.
std::string session_summary(const SessionLines& session, const Plan& plan, const StepWords& words,
                            std::size_t columns);

/// A warning and the line beside which it belongs.
struct LineWarning {
  std::size_t line = 0;  ///< index into SessionLines::lines
  ShortWarning warning;
};

/// At the first coat of a tin: what must be off, and what comes first of its coating's cautions. At
/// the last work that leaves oily rags: what to do with them.
std::vector<LineWarning> warnings_of(const SessionLines& session, const Plan& plan);

}  // namespace tackfree
