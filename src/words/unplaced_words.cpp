#include "tackfree/words/unplaced_words.hpp"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// Of work that no stretch of working hours is long enough for.
std::string too_long_words(const Job& job, const Operation& operation) {
  const double own = operation.work.in(minutes);
  if (!operation.coating)
    return fmt::format(
        "it takes {:.0f} min and the working hours within the plan are too few or too short; add "
        "hours, or plan over more days",
        own);
  const double around = job.data.labour.set_up.value.in(minutes) +
                        job.coatings.at(*operation.coating).clean_up.value.in(minutes);
  return fmt::format(
      "it takes {:.0f} min in one go ({:.0f} min coating, {:.0f} min set-up and clean-up) and no "
      "working window is that long; add a longer window, or split the batch",
      own + around, own, around);
}

/// What a rule makes of a day: `too cold to coat`.
std::string_view closed_words(const ClosedDays& closed) {
  switch (closed.by) {
    case HeldBy::air:
      return word_for(closed.gate.value());
    case HeldBy::quiet_hours:
      return "quiet hours only";
    case HeldBy::not_before:
      return "too soon for its batch";
    case HeldBy::no_coating_day:
      return "no coating";
    case HeldBy::pin:
      return "set for another time";
    default:
      return "too few hours in one go";
  }
}

/// `too near the dew point until touch-dry on 14 of the 16 days you can work, ...`
std::string day_counts(const Unplaced& unplaced) {
  std::string counts;
  std::size_t told = 0;
  for (const ClosedDays& closed : unplaced.closed) {
    const bool first = counts.empty();
    if (first && closed.days == unplaced.work_days)
      return fmt::format(
          "{} on {}", closed_words(closed),
          closed.days == 1 ? "the only day you can work within the plan"
                           : fmt::format("all {} days you can work within the plan", closed.days));
    counts += fmt::format(
        "{}{} on {}{}", first ? "" : ", ", closed_words(closed), closed.days,
        first ? fmt::format(" of the {} days you can work within the plan", unplaced.work_days)
              : "");
    told += closed.days;
  }
  if (told < unplaced.work_days)
    counts += fmt::format(", other steps or waits in the way on {}", unplaced.work_days - told);
  return counts;
}

bool is_by_air(const ClosedDays& closed) { return closed.by == HeldBy::air; }

std::string pin_words(const BatchRules& rules, int coat, const Figures& figures) {
  for (const Pin& pin : rules.pins)
    if (pin.coat == coat)
      return fmt::format("the coat set for {}, {} to {}", figures.day_of(pin.on),
                         figures.clock_of_day(pin.between.begin),
                         figures.clock_of_day(pin.between.end));
  return "the coats set for a day";
}

std::string rule_words(ConflictingRule kind, const Unplaced& unplaced, const DatedWork& work,
                       const Figures& figures) {
  const Operation& operation = work.list.operations.at(unplaced.operation);
  const BatchRules& rules = work.job.batches.at(operation.batch).rules;
  switch (kind) {
    case ConflictingRule::quiet_hours:
      return "the quiet hours for power sanding";
    case ConflictingRule::no_coating_days: {
      std::vector<std::string> days;
      for (const Date on : rules.no_coating_on) days.push_back(figures.day_of(on));
      return fmt::format("no coating on {}", fmt::join(days, ", "));
    }
    case ConflictingRule::space:
      return "the space to dry";
    case ConflictingRule::not_before:
      return rules.not_before ? "not before " + figures.moment(*rules.not_before)
                              : "the times before which batches are not begun";
    case ConflictingRule::pins:
      return pin_words(rules, operation.coat, figures);
    case ConflictingRule::air:
      return operation.coating ? fmt::format("the limits of air for \"{}\"",
                                             work.job.coatings.at(*operation.coating).name)
                               : "the limits of air for coating";
    case ConflictingRule::working_hours:
      break;
  }
  return fmt::format("the working hours, in stretches of {} min at most",
                     unplaced.longest_stretch.count());
}

}  // namespace

std::string unplaced_words(const Unplaced& unplaced, const DatedWork& work) {
  const auto& operations = work.list.operations;
  const bool hours_or_air = unplaced.by == HeldBy::air || unplaced.by == HeldBy::calendar;
  if (hours_or_air && std::ranges::any_of(unplaced.closed, is_by_air))
    return day_counts(unplaced) + "; heat or dry the room, or wait for another season";
  switch (unplaced.by) {
    case HeldBy::previous_step:
      return fmt::format("it waits for \"{}\", which has no time either",
                         word_for(operations.at(unplaced.waits_for.value()).kind));
    case HeldBy::drying:
      return "the coat before it does not dry enough within the plan; warm the room, or plan over "
             "more days";
    case HeldBy::air:
      return fmt::format(
          "{} whenever you can work; heat or dry the room, or wait for another season",
          word_for(unplaced.gate.value()));
    case HeldBy::quiet_hours:
      return "all working hours lie in the quiet hours for power sanding; add daytime hours, or "
             "sand by hand";
    case HeldBy::calendar:
      return too_long_words(work.job, operations.at(unplaced.operation));
    case HeldBy::pin:
      return "it is set for a day and hours at which it cannot go on; set it for another time";
    case HeldBy::no_coating_day:
      return "the days without coating leave it no time; allow one of them, or plan over more days";
    case HeldBy::not_before:
      return "its batch may not be begun within the plan; let it begin sooner, or plan over more "
             "days";
    case HeldBy::space:
      return "there is no room for it to dry; make space, or plan over more days";
    case HeldBy::now:
    case HeldBy::due:
    case HeldBy::order:
    case HeldBy::last_plan:
    case HeldBy::person:
    case HeldBy::dust:
    case HeldBy::coats_a_day:
      break;
  }
  return "other steps fill the working hours; add hours, or plan over more days";
}

std::vector<std::string> conflict_words(const Unplaced& unplaced, const DatedWork& work,
                                        const Figures& figures) {
  std::vector<std::string> words;
  for (const ConflictingRule kind : unplaced.conflict)
    words.push_back(rule_words(kind, unplaced, work, figures));
  return words;
}

}  // namespace tackfree
