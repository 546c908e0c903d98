#include "tackfree/schedule/conflict.hpp"

#include "tackfree/schedule/crew.hpp"
#include "tackfree/schedule/pose_problem.hpp"
#include "tackfree/schedule/solve.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// The job, the step that finds no time, and the plan's span.
struct Case {
  const Job& job;
  const Operation& operation;
  Interval span;
};

/// A kind of rule that can be taken away, and what it says for one step.
struct RuleKind {
  void (*take_away)(Job& job);
  std::string (*words)(const Case& about);
};

void open_all_hours(WorkCalendar& calendar) {
  for (auto& day : calendar.weekly) day = {{0, 24 * 60}};
  calendar.days_off.clear();
  calendar.busy.clear();
  calendar.busy_hours.clear();
}

Minutes longest_stretch(const Case& about) {
  Minutes longest{0};
  for (const Presence& presence : presences(about.job, about.span))
    longest = std::max(longest, presence.stretch.length());
  return longest;
}

std::string hours_words(const Case& about) {
  return fmt::format("the working hours, in stretches of {} min at most",
                     longest_stretch(about).count());
}

std::string quiet_words(const Case& about) {
  return about.operation.power_sanding ? "the quiet hours for power sanding" : "";
}

std::string air_words(const Case& about) {
  return about.operation.coating ? fmt::format("the limits of air for \"{}\"",
                                               about.job.coatings[*about.operation.coating].name)
                                 : "the limits of air for coating";
}

std::string pin_words(const Case& about) {
  for (const Pin& pin : about.job.batches[about.operation.batch].rules.pins)
    if (pin.coat == about.operation.coat)
      return fmt::format("the coat set for {}, {} to {}", iso_date(pin.on),
                         iso_clock(pin.between.begin), iso_clock(pin.between.end));
  return "the coats set for a day";
}

std::string no_coating_words(const Case& about) {
  std::vector<std::string> days;
  for (const Date on : about.job.batches[about.operation.batch].rules.no_coating_on)
    days.push_back(iso_date(on));
  return fmt::format("no coating on {}", fmt::join(days, ", "));
}

std::string not_before_words(const Case& about) {
  const auto& from = about.job.batches[about.operation.batch].rules.not_before;
  return from ? "not before " + iso_local(*from, about.job.calendar.zone)
              : "the times before which batches are not begun";
}

std::string space_words(const Case&) { return "the space to dry"; }

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
    {[](Job& job) { job.calendar.no_power_sanding.clear(); }, quiet_words},
    {[](Job& job) {
       for (Batch& batch : job.batches) batch.rules.no_coating_on.clear();
     },
     no_coating_words},
    {[](Job& job) {
       for (DryingRoom& room : job.rooms) {
         room.space.reset();
         room.places.reset();
       }
     },
     space_words},
    {[](Job& job) {
       for (Batch& batch : job.batches) batch.rules.not_before.reset();
     },
     not_before_words},
    {[](Job& job) {
       for (Batch& batch : job.batches) batch.rules.pins.clear();
     },
     pin_words},
    {take_air, air_words},
    {[](Job& job) {
       open_all_hours(job.calendar);
       for (Person& person : job.people) open_all_hours(person.hours);
     },
     hours_words},
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
    const PosedProblem problem = pose_problem(rules, list_, air_, clocks_, span_);
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
    std::vector<std::string> rules;
    for (const std::size_t kind : conflict) {
      std::string text =
          kinds.at(kind).words({job, list.operations.at(unplaced.operation), schedule.span});
      if (!text.empty()) rules.push_back(std::move(text));
    }
    unplaced.conflict = std::move(rules);
  }
}

}  // namespace tackfree
