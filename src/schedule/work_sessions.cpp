#include "tackfree/schedule/work_sessions.hpp"

#include <algorithm>
#include <utility>

namespace tackfree {
namespace {

class SessionSplit {
 public:
  SessionSplit(const OperationList& list, const Schedule& schedule, const SessionChoice& choice)
      : list_(list), schedule_(schedule), choice_(choice) {}

  std::vector<WorkSession> result() {
    for (std::size_t step = 0; step < schedule_.steps.size(); ++step) take_step(step);
    for (WorkTask& tools : tool_tasks(schedule_)) take(std::move(tools));
    std::ranges::stable_sort(pieces_, {}, &WorkTask::time);
    for (WorkTask& piece : pieces_) add(std::move(piece));
    return std::move(sessions_);
  }

 private:
  const Operation& operation(std::size_t step) const {
    return list_.operations.at(schedule_.steps.at(step).operation);
  }

  void take(WorkTask piece) {
    piece.work = piece.time.length();
    if (piece.work > Minutes(0) && (!choice_.who || piece.who == choice_.who))
      pieces_.push_back(std::move(piece));
  }

  void take_step(std::size_t index) {
    const DatedStep& step = schedule_.steps[index];
    const Operation& work = operation(index);
    if (work.skipped() || (work.done && !choice_.with_done)) return;
    for (std::size_t i = 0; i < step.pieces.size(); ++i)
      take({.time = step.pieces[i],
            .kind = work.kind,
            .steps = {index},
            .first_piece = i,
            .who = i < step.by.size() ? std::optional(step.by[i]) : std::nullopt,
            .coating_session = {}});
  }

  void add(WorkTask piece) {
    if (sessions_.empty() || piece.time.begin > sessions_.back().time.end + longest_pause)
      sessions_.push_back({.time = piece.time, .tasks = {}, .people = {}});
    WorkSession& session = sessions_.back();
    session.time.end = std::max(session.time.end, piece.time.end);
    if (piece.who) {
      const auto place = std::ranges::lower_bound(session.people, *piece.who);
      if (place == session.people.end() || *place != *piece.who)
        session.people.insert(place, *piece.who);
    }
    // Past the sanding of other batches: grits may go from one batch to the next and back.
    const auto own =
        std::find_if(session.tasks.rbegin(), session.tasks.rend(), [&](const WorkTask& task) {
          return task.who == piece.who && (goes_on(task, piece) || !is_sanding(task));
        });
    if (own != session.tasks.rend() && goes_on(*own, piece))
      join(*own, piece);
    else
      session.tasks.push_back(std::move(piece));
  }

  bool is_sanding(const WorkTask& task) const {
    return !task.is_of_tools() && operation(task.steps.back()).grit.has_value();
  }

  /// The rest of a step, the next grit of a sanding, or the coat after its dusting off.
  bool goes_on(const WorkTask& task, const WorkTask& piece) const {
    if (task.is_of_tools() || piece.is_of_tools()) return false;
    if (task.steps.back() == piece.steps.front()) return true;
    const Operation& before = operation(task.steps.back());
    const Operation& work = operation(piece.steps.front());
    if (before.batch != work.batch || before.done.has_value() != work.done.has_value())
      return false;
    if (before.kind == OperationKind::dust_off)
      return work.kind == OperationKind::coat && before.coat == work.coat &&
             before.step == work.step && before.side == work.side;
    return work.grit && work.kind == before.kind && work.kind != OperationKind::repair &&
           work.step == before.step && work.coat == before.coat;
  }

  static void join(WorkTask& task, const WorkTask& piece) {
    task.time.end = std::max(task.time.end, piece.time.end);
    task.work += piece.work;
    task.kind = piece.kind;
    if (task.steps.back() != piece.steps.front()) task.steps.push_back(piece.steps.front());
  }

  const OperationList& list_;
  const Schedule& schedule_;
  const SessionChoice& choice_;
  std::vector<WorkTask> pieces_;
  std::vector<WorkSession> sessions_;
};

}  // namespace

std::vector<WorkTask> tool_tasks(const Schedule& schedule) {
  std::vector<WorkTask> all;
  const auto add = [&](const Interval& time, SessionWork kind,
                       const std::optional<std::size_t>& who,
                       const std::optional<std::size_t>& session) {
    all.push_back({.time = time,
                   .work = time.length(),
                   .kind = kind,
                   .steps = {},
                   .who = who,
                   .coating_session = session});
  };
  for (std::size_t i = 0; i < schedule.sessions.size(); ++i) {
    const Session& session = schedule.sessions[i];
    add(session.set_up, SessionWork::set_up, session.set_up_by, i);
    add(session.clean_up, SessionWork::clean_up, session.clean_up_by, i);
  }
  for (const ToolRest& rest : schedule.tool_rests) {
    const DatedStep& coat = schedule.steps.at(rest.dated_step);
    const auto who = coat.by.empty() ? std::nullopt : std::optional(coat.by.front());
    add(rest.cleaning, SessionWork::clean_up, who, coat.session);
  }
  return all;
}

std::vector<WorkSession> work_sessions(const OperationList& list, const Schedule& schedule,
                                       const SessionChoice& choice) {
  return SessionSplit(list, schedule, choice).result();
}

}  // namespace tackfree
