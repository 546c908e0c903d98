#include "tackfree/plan/notes.hpp"

#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/plan/part_notes.hpp"

#include <algorithm>
#include <iterator>

#include <fmt/format.h>

namespace tackfree {

namespace {

void film_notes(const Plan& plan, std::vector<Note>& notes) {
  for (const StepFilm& film : plan.volumes.films) {
    if (film.verdict == StepFilm::Verdict::good) continue;
    const Batch& batch = plan.job.batches[film.batch];
    const bool thin = film.verdict == StepFilm::Verdict::thin;
    notes.push_back(
        {"film",
         fmt::format("\"{}\": {} coats {}", batch.name, film.build.coats,
                     thin ? "leave less dry film than this wear asks for; plan another coat, "
                            "or expect less."
                          : "build more dry film than this class bears; plan fewer, or it may "
                            "stay soft and crack.")});
  }
}

/// Air that a class bears, but not gladly: above its humidity caution when a coat goes on.
void humidity_notes(const Plan& plan, std::vector<Note>& notes) {
  for (std::size_t c = 0; c < plan.job.coatings.size(); ++c) {
    const Coating& coating = plan.job.coatings[c];
    if (!coating.limits.humidity_caution) continue;
    const auto damp = std::count_if(plan.schedule.steps.begin(), plan.schedule.steps.end(),
                                    [&](const DatedStep& step) {
                                      if (plan.list.operations[step.operation].coating != c)
                                        return false;
                                      const AirState air = plan.air.at(step.begin());
                                      return relative_humidity(air.temperature, air.vapour) >
                                             coating.limits.humidity_caution->value;
                                    });
    if (damp > 0)
      notes.push_back(
          {"damp air",
           fmt::format("{} of the coats of {} go on above {:.0f} % RH, where it may turn "
                       "milky. Wait for drier air, warm the room, or ask for a retarder.",
                       damp, coating.name,
                       coating.limits.humidity_caution->value.in(humidity_percent))});
  }
}

/// Rule 5: pairs of classes that nobody vouches for.
void pair_notes(const Plan& plan, std::vector<Note>& notes) {
  for (const FinishSystem& system : plan.job.systems)
    for (std::size_t i = 1; i < system.steps.size(); ++i) {
      const Coating* under = find_named(plan.job.coatings, system.steps[i - 1].coating);
      const Coating* over = find_named(plan.job.coatings, system.steps[i].coating);
      if (under->class_key == over->class_key) continue;
      notes.push_back(
          {"test board",
           fmt::format("System \"{}\" puts {} over {}: try the pair on a test board first "
                       "and ask the makers; not every pair holds.",
                       system.name, over->class_title, under->class_title)});
    }
}

void rule_notes(const Plan& plan, std::vector<Note>& notes) {
  if (plan.job.faster_than_label)
    notes.push_back({"label",
                     "By your wish warm or moving air may shorten waits below the label's "
                     "hours. The label knows its varnish better than this plan does."});
  const bool late = std::any_of(
      plan.schedule.sessions.begin(), plan.schedule.sessions.end(), [&](const Session& session) {
        const LocalTime end = plan.job.calendar.zone.local(session.clean_up.end);
        return end.minute_of_day > plan.job.calendar.late_after;
      });
  if (late)
    notes.push_back(
        {"late work", fmt::format("Some sessions run past {}: working hours allow it, but "
                                  "a tired hand leaves runs.",
                                  iso_clock(plan.job.calendar.late_after))});
}

}  // namespace

std::vector<Note> notes(const Plan& plan) {
  std::vector<Note> notes;
  film_notes(plan, notes);
  humidity_notes(plan, notes);
  std::ranges::move(part_notes(plan.job), std::back_inserter(notes));
  pair_notes(plan, notes);
  rule_notes(plan, notes);
  return notes;
}

}  // namespace tackfree
