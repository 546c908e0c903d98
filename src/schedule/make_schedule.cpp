#include "tackfree/schedule/make_schedule.hpp"

#include "tackfree/schedule/closed_days.hpp"
#include "tackfree/schedule/conflict.hpp"
#include "tackfree/schedule/crew.hpp"
#include "tackfree/schedule/done_work.hpp"
#include "tackfree/schedule/pose_problem.hpp"
#include "tackfree/schedule/solve.hpp"
#include "tackfree/schedule/tool_rests.hpp"
#include "tackfree/solver/serial.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <tuple>
#include <utility>

namespace tackfree {

namespace {

using solver::Hold;
using solver::SolvedActivity;

/// The solver's answer in dates.
class DatedSolution {
 public:
  DatedSolution(const Job& job, const OperationList& list, const AirSeries& air,
                const std::vector<DryingClock>& clocks, const PosedProblem& posed,
                const solver::Solution& solution)
      : job_(job), list_(list), air_(air), clocks_(clocks), posed_(posed), solution_(solution) {}

  Schedule dated() {
    result_.span = posed_.grid.span;
    for (std::size_t i = 0; i < list_.operations.size(); ++i) {
      if (list_.operations[i].done)
        result_.steps.push_back(done_step(i));
      else if (activity(i).placed())
        result_.steps.push_back(step(i));
      else
        result_.unplaced.push_back(unplaced(i));
    }
    // What stands at the root comes before what only waits for it.
    std::stable_partition(result_.unplaced.begin(), result_.unplaced.end(),
                          [](const Unplaced& u) { return u.by != HeldBy::previous_step; });
    std::stable_sort(result_.steps.begin(), result_.steps.end(),
                     [](const DatedStep& a, const DatedStep& b) { return a.begin() < b.begin(); });
    sessions();
    outcomes();
    return std::move(result_);
  }

 private:
  Unplaced unplaced(std::size_t operation) const {
    const Held held = binding(operation);
    Unplaced unplaced{.operation = operation,
                      .by = held.by,
                      .gate = held.gate,
                      .waits_for = held.operation,
                      .conflict = {}};
    if (held.by == HeldBy::previous_step) return unplaced;
    count_closed_days(posed_, solution_, job_.calendar.zone, unplaced);
    return unplaced;
  }

  Instant at(solver::Slot slot) const {
    return slot == solver::never ? result_.span.end : posed_.grid.at(slot);
  }

  const SolvedActivity& activity(std::size_t operation) const {
    return solution_.activities[posed_.activity_of[operation]];
  }

  Held held(const Hold& hold) const {
    Held held{.until = at(hold.until)};
    switch (hold.by) {
      case Hold::By::lag: {
        const solver::Lag& lag = posed_.problem.lags[hold.lag];
        held.operation = posed_.operation_of[lag.from];
        held.by = HeldBy::previous_step;
        const Wait& wait = posed_.wait_of[hold.lag];
        held.stage = wait.stage;
        held.dry_for = wait.dry_for;
        held.films = wait.films;
        if (wait.stage || wait.dry_for) held.by = HeldBy::drying;
        if (wait.next_day) held.by = HeldBy::coats_a_day;
        if (lag.delay > 0 && list_.operations[wait.operation].grit) held.by = HeldBy::dust;
        break;
      }
      case Hold::By::rule:
        if (hold.rule >= rules::first_release) return released(hold.rule, held);
        held.by = held_by(hold.rule);
        held.gate = gate_of(hold.rule);
        break;
      case Hold::By::window:
        held.by = HeldBy::calendar;
        break;
      case Hold::By::worker:
        held.by = HeldBy::person;
        break;
      case Hold::By::dust:
        held.by = HeldBy::dust;
        break;
      case Hold::By::resource:
        held.by = HeldBy::space;
        break;
      case Hold::By::maximum_lag:  // put off so that the coat over it comes in time
      case Hold::By::order:
        held.by = HeldBy::order;
        break;
    }
    return held;
  }

  /// What done work asked for.
  Held released(solver::Rule rule, Held held) const {
    const std::size_t number = rule - rules::first_release;
    const Release& release = posed_.releases[number];
    held.by = release.by;
    if (number + 1 == rules::most_releases) return held;
    held.operation = release.wait.operation;
    held.stage = release.wait.stage;
    held.dry_for = release.wait.dry_for;
    held.films = release.wait.films;
    return held;
  }

  /// A step as the log tells it.
  DatedStep done_step(std::size_t index) const {
    const Operation& operation = list_.operations[index];
    DatedStep step;
    step.operation = index;
    step.pieces = {operation.done->time};
    if (!operation.coating || operation.done->skipped) return step;
    step.dries_from = operation.done->time.end;
    for (std::size_t s = 0; s < stage_count; ++s)
      step.reaches[s] =
          done_reaches(job_, operation, clocks_[*operation.coating], static_cast<Stage>(s));
    return step;
  }

  Held binding(std::size_t operation) const {
    const Held nobody{.by = HeldBy::calendar, .until = result_.span.end};
    const std::size_t coat = posed_.operation_of[posed_.activity_of[operation]];
    if (coat != operation)
      return {.by = HeldBy::previous_step, .until = result_.span.end, .operation = coat};
    const auto& holds = activity(operation).holds;
    if (holds.empty()) return nobody;
    Held binding = held(holds.back());
    if (binding.operation && !list_.operations[*binding.operation].done &&
        !activity(*binding.operation).placed())
      binding.by = HeldBy::previous_step;
    return binding;
  }

  DatedStep step(std::size_t index) const {
    const SolvedActivity& solved = activity(index);
    const Operation& operation = list_.operations[index];
    DatedStep step;
    step.operation = index;
    for (const solver::Run piece : solved.pieces)
      step.pieces.push_back({at(piece.begin), at(piece.end)});
    const solver::Run place = posed_.place[index];
    const bool whole = !operation.grit.has_value();
    if (whole) step.pieces = {{at(solved.begin() + place.begin), at(solved.begin() + place.end)}};
    for (const Hold& hold : solved.holds) step.held.push_back(held(hold));
    const auto typical = air_.typical_from();
    Instant rests_until = step.end();
    if (operation.coating) {
      step.dries_from = at(solved.end());
      for (std::size_t s = 0; s < stage_count; ++s)
        step.reaches[s] = clocks_[*operation.coating].reached(
            static_cast<Stage>(s), *step.dries_from, operation.film_for(static_cast<Stage>(s)));
      rests_until = step.reaches[index_of(Stage::touch)].value_or(rests_until);
    }
    for (const Held& hold : step.held)
      if (hold.by == HeldBy::drying || hold.by == HeldBy::air)
        rests_until = std::max(rests_until, hold.until);
    const bool by_air = operation.coating.has_value() ||
                        std::any_of(step.held.begin(), step.held.end(),
                                    [](const Held& h) { return h.by == HeldBy::drying; });
    step.on_typical_air = by_air && typical && rests_until > *typical;
    return step;
  }

  void sessions() {
    std::vector<solver::SolvedSession> solved = solution_.sessions;
    std::sort(solved.begin(), solved.end(),
              [](const auto& a, const auto& b) { return a.coats.begin < b.coats.begin; });
    for (const solver::SolvedSession& session : solved) {
      const auto [coating, method] = posed_.products[session.product];
      const solver::Product& product = posed_.problem.products[session.product];
      Session dated;
      dated.coating = coating;
      dated.method = method;
      dated.set_up = {at(session.coats.begin - product.set_up), at(session.coats.begin)};
      dated.clean_up = {at(session.coats.end), at(session.coats.end + product.clean_up)};
      for (std::size_t s = 0; s < result_.steps.size(); ++s) {
        const std::size_t operation = result_.steps[s].operation;
        const auto& members = session.activities;
        if (!list_.operations[operation].coating ||
            std::find(members.begin(), members.end(), posed_.activity_of[operation]) ==
                members.end())
          continue;
        dated.steps.push_back(s);
        result_.steps[s].session = result_.sessions.size();
      }
      result_.sessions.push_back(std::move(dated));
    }
  }

  const DatedStep* step_of(std::size_t operation) const {
    for (const DatedStep& step : result_.steps)
      if (step.operation == operation) return &step;
    return nullptr;
  }

  void outcomes() {
    bool all = result_.unplaced.empty();
    for (const Outcome& outcome : list_.outcomes) {
      DatedOutcome dated{outcome.batch, outcome.stage, std::nullopt};
      for (const std::size_t coat : outcome.coats) {
        const DatedStep* step = step_of(coat);
        const auto reached = step ? step->reaches[index_of(outcome.stage)] : std::nullopt;
        const bool first = coat == outcome.coats.front();
        dated.at = reached && (first || dated.at) ? std::max(dated.at, reached) : std::nullopt;
      }
      if (outcome.stage == Stage::light_use) {
        if (dated.at && all)
          result_.ready_at = std::max(result_.ready_at.value_or(*dated.at), *dated.at);
        else
          all = false;
      }
      result_.outcomes.push_back(dated);
    }
    if (!all) result_.ready_at.reset();
  }

  const Job& job_;
  const OperationList& list_;
  const AirSeries& air_;
  const std::vector<DryingClock>& clocks_;
  const PosedProblem& posed_;
  const solver::Solution& solution_;
  Schedule result_;
};

/// The steps where the last plan had them, as far as the rules still let them; nothing where no
/// step stood in it.
std::optional<solver::Solution> as_last_planned(const PosedProblem& posed,
                                                const OperationList& list) {
  solver::SchedulingProblem pinned = posed.problem;
  const auto unknown = static_cast<std::int64_t>(pinned.horizon);
  std::vector<std::int64_t> priority(pinned.activities.size(), unknown);
  for (std::size_t i = list.operations.size(); i-- > 0;) {
    const std::size_t activity = posed.activity_of[i];
    const auto& last = list.operations[i].starts_last;
    if (activity == done_already || !last) continue;
    priority[activity] = posed.grid.slot_up(*last) - posed.place[i].begin;
  }
  bool any = false;
  for (std::size_t a = 0; a < priority.size(); ++a) {
    if (priority[a] <= 0 || priority[a] >= unknown) continue;
    any = true;
    const solver::OpenTime& time = pinned.open_times[pinned.activities[a].open_time];
    std::vector<solver::Rule> closed(solver::index(pinned.horizon));
    for (solver::Slot s = 0; s < pinned.horizon; ++s)
      closed[solver::index(s)] = time.is_open(s) && s < priority[a] ? rules::as_last : time.rule(s);
    pinned.activities[a].open_time = pinned.open_times.size();
    pinned.open_times.emplace_back(std::move(closed));
  }
  if (!any) return std::nullopt;
  return solver::placed_by_priority(pinned, priority);
}

/// As good for the person, wherever the steps lie.
bool is_as_good(const solver::Worth& a, const solver::Worth& b) {
  return std::tie(a.unplaced, a.ready, a.sessions, a.late) <=
         std::tie(b.unplaced, b.ready, b.sessions, b.late);
}

}  // namespace

std::vector<DryingClock> drying_clocks(const Job& job, const AirSeries& air) {
  return drying_clocks(job.coatings, air, job.room.air_speed, job.faster_than_label);
}

namespace {

/// The answer in dates. Of schedules that are equally good the one nearest to the last plan is
/// kept.
Schedule dated(const Job& job, const OperationList& list, const AirSeries& air,
               const std::vector<DryingClock>& clocks, const PosedProblem& problem, Solved solved,
               std::size_t most_sessions = solver::any_number) {
  if (auto kept = as_last_planned(problem, list)) {
    const solver::Worth its = solver::worth(problem.problem, *kept);
    if (its.sessions <= most_sessions && is_as_good(its, solved.worth))
      solved.solution = std::move(*kept);
  }
  Schedule schedule = DatedSolution(job, list, air, clocks, problem, solved.solution).dated();
  schedule.proof = solved.proof;
  schedule.tool_rests = tool_rests(job, list, schedule);
  assign_people(job, list, schedule);
  return schedule;
}

Schedule schedule_with_due_dates(const Job& job, const OperationList& list, const AirSeries& air,
                                 const std::vector<DryingClock>& clocks, Interval span,
                                 solver::Effort* effort) {
  const PosedProblem problem = pose_problem(job, list, air, clocks, span);
  return dated(job, list, air, clocks, problem, solve(problem, solver::any_number, effort));
}

/// The batches that are not ready for light use when they are due, where there are two to four of
/// them: more are not worth the searches.
std::vector<std::size_t> late_ones(const Job& job, const Schedule& schedule) {
  std::vector<std::size_t> late;
  for (const DatedOutcome& outcome : schedule.outcomes) {
    const auto due = job.batches[outcome.batch].rules.ready_by;
    if (outcome.stage == Stage::light_use && due && (!outcome.at || *outcome.at > *due))
      late.push_back(outcome.batch);
  }
  if (late.size() < 2 || late.size() > 4 || !schedule.unplaced.empty()) late.clear();
  return late;
}

}  // namespace

Schedule make_schedule(const Job& job, const OperationList& list, const AirSeries& air,
                       const std::vector<DryingClock>& clocks, Interval span,
                       solver::Effort* effort) {
  auto with = [&](const Job& rules) {
    return schedule_with_due_dates(rules, list, air, clocks, span, effort);
  };
  Schedule schedule = with(job);
  const bool any_due = std::any_of(job.batches.begin(), job.batches.end(), [](const Batch& batch) {
    return batch.rules.ready_by.has_value();
  });
  if (!schedule.unplaced.empty() && any_due) {
    // What is due is wanted, not needed: the plan is made without any, and where several are late
    // then, once more with all but one of them, the first that makes room for the rest.
    Job without = job;
    for (Batch& batch : without.batches) batch.rules.ready_by.reset();
    schedule = with(without);
    for (const std::size_t late : late_ones(job, schedule)) {
      Job but_one = job;
      but_one.batches[late].rules.ready_by.reset();
      Schedule kept = with(but_one);
      if (!kept.unplaced.empty()) continue;
      schedule = std::move(kept);
      break;
    }
    schedule.proof.reset();
  }
  name_conflicts(job, list, air, clocks, schedule);
  return schedule;
}

FewerSessions schedule_in_sessions(const Job& job, const OperationList& list, const AirSeries& air,
                                   const std::vector<DryingClock>& clocks, Interval span,
                                   std::size_t most_sessions, solver::Effort* effort) {
  const PosedProblem problem = pose_problem(job, list, air, clocks, span);
  Solved solved = solve(problem, most_sessions, effort);
  FewerSessions answer{.none = solved.impossible};
  const solver::Worth& worth = solved.worth;
  if (worth.unplaced == 0 && worth.ready != solver::never && worth.sessions <= most_sessions)
    answer.schedule = dated(job, list, air, clocks, problem, std::move(solved), most_sessions);
  return answer;
}

}  // namespace tackfree
