#include "tackfree/schedule/conflict.hpp"

#include "tackfree/schedule/bridge.hpp"
#include "tackfree/schedule/crew.hpp"
#include "tackfree/schedule/solve.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace tackfree {

namespace {

/// A kind of rule that can be taken away.
struct RuleKind {
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

/// In the order in which they are taken away: what can be given up most easily first.
constexpr std::array<RuleKind, 7> kinds{{
    {[](Job& job) { job.calendar.no_power_sanding.clear(); }, ConflictingRule::quiet_hours},
    {[](Job& job) {
       for (Batch& batch : job.batches) batch.rules.no_coating_on.clear();
     },
     ConflictingRule::no_coating_days},
    {[](Job& job) {
       for (DryingRoom& room : job.rooms) {
         room.space.reset();
         room.places.reset();
       }
     },
     ConflictingRule::space},
    {[](Job& job) {
       for (Batch& batch : job.batches) batch.rules.not_before.reset();
     },
     ConflictingRule::not_before},
    {[](Job& job) {
       for (Batch& batch : job.batches) batch.rules.pins.clear();
     },
     ConflictingRule::pins},
    {take_air, ConflictingRule::air},
    {[](Job& job) {
       open_all_hours(job.calendar);
       for (Person& person : job.people) open_all_hours(person.hours);
     },
     ConflictingRule::working_hours},
}};

/// Sets of rules tried out on one step.
class Trials {
 public:
  Trials(const Job& job, const OperationList& list, const AirSeries& air,
         const std::vector<DryingClock>& clocks, Interval span)
      : job_(job), list_(list), air_(air), clocks_(clocks), span_(span) {}

  /// The kinds that cannot hold together; empty when the step has no time without any of them.
  std::vector<std::size_t> conflict(std::size_t operation) const {
    Job rules = job_;
    for (Batch& batch : rules.batches) batch.rules.ready_by.reset();
    Job none = rules;
    for (const RuleKind& kind : kinds) kind.take_away(none);
    std::vector<std::size_t> left;
    if (!has_time(none, operation)) return left;
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      Job fewer = rules;
      kinds.at(k).take_away(fewer);
      if (has_time(fewer, operation))
        left.push_back(k);
      else
        rules = std::move(fewer);
    }
    return left;
  }

 private:
  bool has_time(const Job& rules, std::size_t operation) const {
    const Bridge problem = bridge(rules, list_, air_, clocks_, span_);
    return solved_roughly(problem).activities[problem.activity_of[operation]].placed();
  }

  const Job& job_;
  const OperationList& list_;
  const AirSeries& air_;
  const std::vector<DryingClock>& clocks_;
  Interval span_;
};

}  // namespace

void name_conflicts(const Job& job, const OperationList& list, const AirSeries& air,
                    const std::vector<DryingClock>& clocks, Schedule& schedule) {
  constexpr int most = 3;
  int looked_into = 0;
  const Trials trials(job, list, air, clocks, schedule.span);
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
