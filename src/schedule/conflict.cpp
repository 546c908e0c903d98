#include "tackfree/schedule/conflict.hpp"

#include "tackfree/schedule/crew.hpp"
#include "tackfree/schedule/pose_problem.hpp"
#include "tackfree/schedule/solve.hpp"

#include <algorithm>
#include <array>
#include <bitset>
#include <map>
#include <utility>

namespace tackfree {

namespace {

/// A kind of rule that can be taken away where the job has it.
struct RuleKind {
  bool (*is_in)(const Job& job);
  void (*take_away)(Job& job);
  ConflictingRule rule;
};

void open_all_hours(WorkCalendar& calendar) {
  for (auto& day : calendar.weekly) day = {{0, 24 * 60}};
  calendar.days_off.clear();
  calendar.busy.clear();
  calendar.busy_hours.clear();
}

Minutes longest_stretch(const Job& job, Interval span) {
  Minutes longest{0};
  for (const Presence& presence : presences(job, span))
    longest = std::max(longest, presence.stretch.length());
  return longest;
}

void take_air(Job& job) {
  for (Coating& coating : job.coatings) {
    coating.limits.put_on_min.value = celsius(-60);
    coating.limits.put_on_max.value = celsius(90);
    coating.limits.hold_min.value = celsius(-60);
    coating.limits.humidity_max.value = humidity_percent(100);
    coating.limits.dew_point_margin.value = kelvins(-90);
    coating.limits.hold_put_on_min.reset();
  }
}

bool any_batch(const Job& job, bool (*has)(const Batch& batch)) {
  return std::ranges::any_of(job.batches, has);
}

bool always(const Job&) { return true; }

/// In the order in which they are taken away: what can be given up most easily first.
constexpr std::array<RuleKind, 7> kinds{{
    {[](const Job& job) { return !job.calendar.no_power_sanding.empty(); },
     [](Job& job) { job.calendar.no_power_sanding.clear(); }, ConflictingRule::quiet_hours},
    {[](const Job& job) {
       return any_batch(job, [](const Batch& batch) { return !batch.rules.no_coating_on.empty(); });
     },
     [](Job& job) {
       for (Batch& batch : job.batches) batch.rules.no_coating_on.clear();
     },
     ConflictingRule::no_coating_days},
    {[](const Job& job) {
       return std::ranges::any_of(job.rooms,
                                  [](const DryingRoom& room) { return room.space || room.places; });
     },
     [](Job& job) {
       for (DryingRoom& room : job.rooms) {
         room.space.reset();
         room.places.reset();
       }
     },
     ConflictingRule::space},
    {[](const Job& job) {
       return any_batch(job, [](const Batch& batch) { return batch.rules.not_before.has_value(); });
     },
     [](Job& job) {
       for (Batch& batch : job.batches) batch.rules.not_before.reset();
     },
     ConflictingRule::not_before},
    {[](const Job& job) {
       return any_batch(job, [](const Batch& batch) { return !batch.rules.pins.empty(); });
     },
     [](Job& job) {
       for (Batch& batch : job.batches) batch.rules.pins.clear();
     },
     ConflictingRule::pins},
    {always, take_air, ConflictingRule::air},
    {always,
     [](Job& job) {
       open_all_hours(job.calendar);
       for (Person& person : job.people) open_all_hours(person.hours);
     },
     ConflictingRule::working_hours},
}};

/// A set of kinds, by bit.
using KindSet = std::bitset<kinds.size()>;

/// Sets of rules tried out, each once for all steps.
class Trials {
 public:
  Trials(Job job, const OperationList& list, const AirSeries& air,
         const std::vector<DryingClock>& clocks, Interval span)
      : job_(std::move(job)), list_(list), air_(air), clocks_(clocks), span_(span) {
    for (Batch& batch : job_.batches) batch.rules.ready_by.reset();
  }

  /// The kinds that cannot hold together; empty when the step has no time without any of them.
  std::vector<std::size_t> conflict(std::size_t operation) {
    std::vector<std::size_t> left;
    KindSet all, away;
    for (std::size_t k = 0; k < kinds.size(); ++k) all[k] = kinds.at(k).is_in(job_);
    if (!has_time(all, operation)) return left;
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      if (!all[k]) continue;
      away.set(k);
      if (!has_time(away, operation)) continue;
      left.push_back(k);
      away.reset(k);
    }
    // Taking anything away helps where nothing need be: then it is the order that is in the way.
    if (left.size() == all.count() && has_time({}, operation)) left.clear();
    return left;
  }

 private:
  bool has_time(KindSet away, std::size_t operation) {
    auto found = placed_.find(away.to_ulong());
    if (found == placed_.end())
      found = placed_.emplace(away.to_ulong(), placed_without(away)).first;
    return found->second.at(operation);
  }

  /// By operation: has it a time without these rules?
  std::vector<bool> placed_without(KindSet away) const {
    Job rules = job_;
    for (std::size_t k = 0; k < kinds.size(); ++k)
      if (away[k]) kinds.at(k).take_away(rules);
    const PosedProblem problem = pose_problem(rules, list_, air_, clocks_, span_);
    const solver::Solution solution = solved_roughly(problem);
    std::vector<bool> placed;
    for (const std::size_t activity : problem.activity_of)
      placed.push_back(activity != done_already && solution.activities[activity].placed());
    return placed;
  }

  Job job_;  ///< what is due is wanted, not needed
  const OperationList& list_;
  const AirSeries& air_;
  const std::vector<DryingClock>& clocks_;
  Interval span_;
  std::map<unsigned long, std::vector<bool>> placed_;  ///< by the kinds taken away
};

}  // namespace

void name_conflicts(const Job& job, const OperationList& list, const AirSeries& air,
                    const std::vector<DryingClock>& clocks, Schedule& schedule) {
  constexpr int most = 3;
  int looked_into = 0;
  Trials trials(job, list, air, clocks, schedule.span);
  for (Unplaced& unplaced : schedule.unplaced) {
    if (unplaced.by == HeldBy::previous_step || ++looked_into > most) continue;
    const auto conflict = trials.conflict(unplaced.operation);
    if (conflict.size() < 2) continue;
    for (const std::size_t kind : conflict) {
      const ConflictingRule rule = kinds.at(kind).rule;
      // Quiet hours are in the way of what is sanded by power alone, else of what comes before it.
      if (rule == ConflictingRule::quiet_hours &&
          !list.operations.at(unplaced.operation).power_sanding)
        continue;
      unplaced.conflict.push_back(rule);
      if (rule == ConflictingRule::working_hours)
        unplaced.longest_stretch = longest_stretch(job, schedule.span);
    }
  }
}

}  // namespace tackfree
