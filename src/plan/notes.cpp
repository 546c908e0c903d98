#include "tackfree/plan/notes.hpp"

#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <variant>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// A solid board this wide moves enough to cup when only one face is sealed. Common practice, no
/// source for the figure.
constexpr Length wide_board = millimetres(200);

void film_notes(const Plan& plan, std::vector<Note>& notes) {
  for (const StepFilm& film : plan.volumes.films) {
    if (film.verdict == StepFilm::Verdict::good) continue;
    const Batch& batch = plan.job.batches[film.batch];
    const bool thin = film.verdict == StepFilm::Verdict::thin;
    notes.push_back(
        {"film",
         thin ? fmt::format(
                    "Batch \"{}\": {} coats leave {:.0f} um of dry film where {:.0f} um is the "
                    "aim; plan another coat, or expect less wear.",
                    batch.name, film.build.coats, film.build.counted_dry.in(micrometres),
                    film.aim.in(micrometres))
              : fmt::format(
                    "Batch \"{}\": {} coats build {:.0f} um of dry film, over the {:.0f} um that "
                    "this class bears; plan fewer coats, or it may stay soft and crack.",
                    batch.name, film.build.coats, film.build.counted_dry.in(micrometres),
                    film.cap.in(micrometres))});
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

/// Rule 9: a wide solid panel gets as many coats on its back as on its face, or it cups.
void cupping_notes(const Plan& plan, std::vector<Note>& notes) {
  for (const Part& part : plan.job.parts) {
    const Board* board = std::get_if<Board>(&part.shape);
    if (board == nullptr || part.material != Material::solid_wood || board->width < wide_board)
      continue;
    if (part.coated.contains(Face::top) == part.coated.contains(Face::bottom)) continue;
    notes.push_back(
        {"one face only",
         fmt::format("\"{}\" is a wide solid board coated on one face only: it takes up "
                     "and gives off moisture on the other and cups. Coat both faces alike.",
                     part.name)});
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

void air_notes(const Plan& plan, std::vector<Note>& notes) {
  const AirRows* rows = std::get_if<AirRows>(&plan.job.air);
  const Zone& zone = plan.job.calendar.zone;
  if (rows != nullptr && rows->recorded_in)
    notes.push_back(
        {"air", fmt::format("The hours of air were recorded in {} and are replayed here "
                            "under a later year: this is not a forecast.",
                            *rows->recorded_in)});
  for (const AirSeries::Bridged& bridged : plan.air.bridged())
    notes.push_back(
        {"air", fmt::format("No air is known from {} to {}; a straight line bridges it.",
                            iso_local(bridged.gap.begin, zone), iso_local(bridged.gap.end, zone))});
  const auto typical = plan.air.typical_from();
  if (!typical) return;
  const auto resting = std::count_if(plan.schedule.steps.begin(), plan.schedule.steps.end(),
                                     [](const DatedStep& s) { return s.on_typical_air; });
  if (resting > 0)
    notes.push_back({"air", fmt::format("From {} on {}; {} steps rest on it and are less certain.",
                                        iso_local(*typical, zone),
                                        typical == plan.air.mean_day_from()
                                            ? "the mean day of the last seven known days repeats"
                                            : "the air is typical, not forecast",
                                        resting)});
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
  cupping_notes(plan, notes);
  pair_notes(plan, notes);
  air_notes(plan, notes);
  rule_notes(plan, notes);
  return notes;
}

}  // namespace tackfree
