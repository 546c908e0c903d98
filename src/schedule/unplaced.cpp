#include "tackfree/schedule/unplaced.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string why(const Job& job, const OperationList& list, const Operation& operation,
                const Held& binding) {
  const double hours_needed = operation.work.in(minutes);
  switch (binding.by) {
    case HeldBy::previous_step:
      return fmt::format("it waits for \"{}\", which has no time either",
                         word_for(list.operations[*binding.operation].kind));
    case HeldBy::drying:
      return "the coat before it does not dry enough within the plan; warm the room, or plan over "
             "more days";
    case HeldBy::air:
      return fmt::format(
          "{} in all working hours of the plan; heat or dry the room, or wait for "
          "another season",
          word_for(*binding.gate));
    case HeldBy::quiet_hours:
      return "all working hours lie in the quiet hours for power sanding; add daytime hours, or "
             "sand "
             "by hand";
    case HeldBy::calendar:
      if (operation.coating) {
        const double around = job.data.labour.set_up.value.in(minutes) +
                              job.coatings[*operation.coating].clean_up.value.in(minutes);
        return fmt::format(
            "it takes {:.0f} min in one go ({:.0f} min coating, {:.0f} min set-up and clean-up) "
            "and "
            "no working window is that long; add a longer window, or split the batch",
            hours_needed + around, hours_needed, around);
      }
      return fmt::format(
          "it takes {:.0f} min and the working hours within the plan are too few or "
          "too short; add hours, or plan over more days",
          hours_needed);
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

}  // namespace

Unplaced unplaced(const Job& job, const OperationList& list, std::size_t operation,
                  const Held& binding) {
  return {
      operation, binding.by, binding.gate, why(job, list, list.operations[operation], binding), {}};
}

}  // namespace tackfree
