#include "tackfree/plan/notes.hpp"

#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/plan/early_coats.hpp"
#include "tackfree/plan/left_out.hpp"
#include "tackfree/plan/log_facts.hpp"
#include "tackfree/plan/part_notes.hpp"
#include "tackfree/plan/recoat_slack.hpp"
#include "tackfree/plan/shop_notes.hpp"

#include <algorithm>
#include <iterator>

#include <fmt/format.h>

namespace tackfree {

namespace {

void film_notes(const Plan& plan, std::vector<Note>& notes) {
  for (const StepFilm& film : plan.volumes.films) {
    if (film.verdict == StepFilm::Verdict::good) continue;
    const Batch& batch = plan.job.batches[film.batch];
    const FinishSystem* system = find_named(plan.job.systems, batch.system);
    const Coating* coating = find_named(plan.job.coatings, system->steps[film.step].coating);
    std::string_view say =
        "build more dry film than this class bears; plan fewer, or it may stay soft and crack.";
    if (film.verdict == StepFilm::Verdict::thin)
      say = film.build.coats < coating->coats_max.value
                ? "leave less dry film than this wear asks for; plan another coat, or expect less."
                : "leave less dry film than this wear asks for, and the class bears no more coats; "
                  "choose one that builds more, or expect less.";
    notes.push_back(
        {"film", fmt::format("\"{}\": {} coats {}", batch.name, film.build.coats, say)});
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

/// Rule 5: what holds on what, and pairs of classes that nobody vouches for.
void pair_notes(const Plan& plan, std::vector<Note>& notes) {
  for (const FinishSystem& system : plan.job.systems)
    for (std::size_t i = 1; i < system.steps.size(); ++i) {
      const Coating* under = find_named(plan.job.coatings, system.steps[i - 1].coating);
      const Coating* over = find_named(plan.job.coatings, system.steps[i].coating);
      if (under->class_key == over->class_key) continue;
      const FollowRule* rule = follow_rule(plan.job.data, *under, *over);
      const std::string pair = fmt::format("System \"{}\" puts {} over {}", system.name,
                                           over->class_title, under->class_title);
      if (rule == nullptr)
        notes.push_back({"test board", pair + ": try the pair on a test board first and ask the "
                                              "makers; not every pair holds."});
      else if (rule->verdict == FollowRule::Verdict::allow && !rule->say.empty())
        notes.push_back({"pair", fmt::format("{}: {}.", pair, rule->say)});
      else if (rule->verdict == FollowRule::Verdict::warn)
        notes.push_back({"test board", fmt::format("{}: {}. Try the pair on a test board first.",
                                                   pair, rule->say)});
    }
}

/// Rule 14: who wants depth builds with gloss.
void sheen_notes(const Plan& plan, std::vector<Note>& notes) {
  for (const StepFilm& film : plan.volumes.films) {
    const FinishSystem* system = find_named(plan.job.systems, plan.job.batches[film.batch].system);
    const Coating* coating = find_named(plan.job.coatings, system->steps[film.step].coating);
    const bool dull = coating->sheen == Sheen::satin || coating->sheen == Sheen::matt;
    const bool last = film.step + 1 == system->steps.size();
    const int build = film.build.coats - (last ? 1 : 0);
    if (!system->clear_build || !dull || build < 1) continue;
    notes.push_back(
        {"sheen",
         fmt::format("Batch \"{}\" is to be clear: put gloss of the same make in place of \"{}\" "
                     "in {} of {} coats, as a step of its own before it. That means two tins.",
                     plan.job.batches[film.batch].name, coating->name, build, film.build.coats)});
  }
}

/// What a coat that is sanded for goes on over: the coat below; one that is put on once more and
/// was not washed off goes on over itself.
const Coating& coating_below(const Plan& plan, const CoatPlace& place) {
  const FinishSystem* system = find_named(plan.job.systems, plan.job.batches[place.batch].system);
  const bool over_itself =
      place.again > 0 && std::ranges::none_of(plan.list.operations, [&](const Operation& op) {
        return op.takes_off && op.batch == place.batch && op.step == place.step &&
               op.coat == place.coat;
      });
  const std::size_t below =
      over_itself || place.coat > 1 || place.step == 0 ? place.step : place.step - 1;
  return *find_named(plan.job.coatings, system->steps[below].coating);
}

/// `once more` of a coat that a fault has cost.
std::string_view again_words(const CoatPlace& place) { return place.again > 0 ? " once more" : ""; }

/// Rule 2: coats that the person's hours keep from the window of the one below. What the log says
/// was sanded has missed nothing, and its class may have no window.
void window_notes(const Plan& plan, std::vector<Note>& notes) {
  const KeyedCoats sanded = sanded_by_log(plan.job);
  for (const CoatPlace& place : plan.keyed) {
    if (sanded.contains(place)) continue;
    const Batch& batch = plan.job.batches[place.batch];
    const FinishSystem* system = find_named(plan.job.systems, batch.system);
    const Coating& under = coating_below(plan, place);
    if (!under.recoat_unsanded_within) continue;  // sanded by the log, for the person's own reasons
    notes.push_back(
        {"recoat window",
         fmt::format("Batch \"{}\", {} coat {}{}: your hours miss the {:g} h within which {} takes "
                     "another coat unsanded, so it is sanded first, when it is dry to sand.",
                     batch.name, system->steps[place.step].name, place.coat, again_words(place),
                     under.recoat_unsanded_within->value.in(hours), under.name)});
  }
}

/// Coats that are held to a window, and those with less to spare than the job wants.
void room_notes(const Plan& plan, std::vector<Note>& notes) {
  const auto named_coat = [&](const CoatPlace& place) {
    const Batch& batch = plan.job.batches[place.batch];
    const FinishSystem* system = find_named(plan.job.systems, batch.system);
    return fmt::format("Batch \"{}\", {} coat {}{}", batch.name, system->steps[place.step].name,
                       place.coat, again_words(place));
  };
  for (const auto& [place, spare] : plan.in_window)
    if (spare <= Duration())
      notes.push_back({"recoat window",
                       named_coat(place) +
                           ": the work before it is put off so that it comes while the coat below "
                           "takes it unsanded; sanding first would serve the plan's aim less."});
  const Duration wanted = plan.job.recoat_to_spare;
  for (const RecoatSlack& slack : recoat_slacks(plan)) {
    const DatedStep& step = plan.schedule.steps[slack.dated_step];
    const Operation& op = plan.list.operations[step.operation];
    const Duration spare = to_duration(slack.until - step.begin());
    if (spare < wanted)
      notes.push_back({"recoat window",
                       fmt::format("{} has {:.1f} h to spare before the coat below takes it "
                                   "unsanded no more; {:g} h would make the plan ready on a later "
                                   "day or take more sessions.",
                                   named_coat(place_of(op)), spare.in(hours), wanted.in(hours))});
  }
}

/// Lines of the advice that belong to what a system asks for, not to a class.
void filler_notes(const Plan& plan, std::vector<Note>& notes) {
  const bool filled =
      std::any_of(plan.list.operations.begin(), plan.list.operations.end(),
                  [](const Operation& op) { return op.kind == OperationKind::fill_pores; });
  if (!filled) return;
  for (const Advice& advice : plan.job.data.texts.advice)
    if (advice.key == "fill_pores")
      for (const std::string& line : advice.lines) notes.push_back({"paste filler", line});
}

/// Airing that keeps coats from being put on at all.
void airing_notes(const Plan& plan, std::vector<Note>& notes) {
  if (!plan.aired || plan.schedule.unplaced.empty()) return;
  notes.push_back({"airing",
                   "Not all of the work finds a time in the room as you air it: outdoor air cools "
                   "it, hours after the coats too. Heat more, coat in milder weather, or choose a "
                   "coating that bears more cold."});
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

/// Lines of the log that do not count, the first in full.
void log_notes(const Plan& plan, std::vector<Note>& notes) {
  constexpr std::size_t most = 3;
  const Problems problems = left_out_problems(plan.job);
  for (std::size_t i = 0; i < std::min(most, problems.size()); ++i)
    notes.push_back(
        {"log", fmt::format("A line of the log is left out: {}", to_text(problems[i]))});
  if (problems.size() > most)
    notes.push_back({"log", fmt::format("There are {} more mistakes in lines of the log that are "
                                        "left out; tackfree check lists them all.",
                                        problems.size() - most)});
}

}  // namespace

std::vector<Note> notes(const Plan& plan) {
  std::vector<Note> notes = early_coat_notes(plan);
  log_notes(plan, notes);
  film_notes(plan, notes);
  humidity_notes(plan, notes);
  std::ranges::move(part_notes(plan.job), std::back_inserter(notes));
  pair_notes(plan, notes);
  sheen_notes(plan, notes);
  window_notes(plan, notes);
  room_notes(plan, notes);
  filler_notes(plan, notes);
  airing_notes(plan, notes);
  rule_notes(plan, notes);
  std::ranges::move(shop_notes(plan), std::back_inserter(notes));
  return notes;
}

}  // namespace tackfree
