#include "tackfree/plan/notes.hpp"

#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/logged/left_out.hpp"
#include "tackfree/logged/log_facts.hpp"
#include "tackfree/plan/early_coats.hpp"
#include "tackfree/plan/part_notes.hpp"
#include "tackfree/plan/recoat_slack.hpp"
#include "tackfree/plan/shop_notes.hpp"

#include <algorithm>
#include <iterator>

namespace tackfree {

namespace {

void film_notes(const Plan& plan, std::vector<Note>& notes) {
  for (const StepFilm& film : plan.volumes.films) {
    if (film.verdict == StepFilm::Verdict::good) continue;
    const FinishSystem* system = find_named(plan.job.systems, plan.job.batches[film.batch].system);
    const Coating* coating = find_named(plan.job.coatings, system->steps[film.step].coating);
    FilmNote::Fault fault = FilmNote::Fault::thick;
    if (film.verdict == StepFilm::Verdict::thin)
      fault = film.build.coats < coating->coats_max.value ? FilmNote::Fault::thin
                                                          : FilmNote::Fault::thin_at_most;
    notes.emplace_back(FilmNote{film.batch, film.build.coats, fault});
  }
}

/// Air that a class bears, but not gladly: above its humidity caution when a coat goes on.
void humidity_notes(const Plan& plan, std::vector<Note>& notes) {
  for (std::size_t c = 0; c < plan.job.coatings.size(); ++c) {
    const Coating& coating = plan.job.coatings[c];
    if (!coating.limits.humidity_caution) continue;
    const Humidity most = coating.limits.humidity_caution->value;
    const auto damp = std::count_if(plan.schedule.steps.begin(), plan.schedule.steps.end(),
                                    [&](const DatedStep& step) {
                                      if (plan.list.operations[step.operation].coating != c)
                                        return false;
                                      const AirState air = plan.air.at(step.begin());
                                      return relative_humidity(air.temperature, air.vapour) > most;
                                    });
    if (damp > 0) notes.emplace_back(DampAirNote{c, static_cast<int>(damp), most});
  }
}

/// Rule 5: what holds on what, and pairs of classes that nobody vouches for.
void pair_notes(const Plan& plan, std::vector<Note>& notes) {
  const auto wait_of = [&](const Coating& under, const Coating& over) {
    const auto wait = pair_wait(plan.job.data, under, over);
    return wait ? std::optional(wait->value) : std::nullopt;
  };
  for (std::size_t s = 0; s < plan.job.systems.size(); ++s) {
    const FinishSystem& system = plan.job.systems[s];
    for (std::size_t i = 1; i < system.steps.size(); ++i) {
      const Coating* under = find_named(plan.job.coatings, system.steps[i - 1].coating);
      const Coating* over = find_named(plan.job.coatings, system.steps[i].coating);
      if (under->class_key == over->class_key) continue;
      const FollowRule* rule = follow_rule(plan.job.data, *under, *over);
      if (rule == nullptr)
        notes.emplace_back(PairNote{s, i, PairNote::Trust::unknown, {}, wait_of(*under, *over)});
      else if (rule->verdict == FollowRule::Verdict::allow && !rule->say.empty())
        notes.emplace_back(PairNote{s, i, PairNote::Trust::holds, rule->say, {}});
      else if (rule->verdict == FollowRule::Verdict::warn)
        notes.emplace_back(PairNote{s, i, PairNote::Trust::doubtful, rule->say, {}});
    }
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
    notes.emplace_back(SheenNote{film.batch, film.step, build, film.build.coats});
  }
}

/// What a coat that is sanded for goes on over, by its index: the coat below; one that is put on
/// once more and was not washed off goes on over itself.
std::size_t coating_below(const Plan& plan, const CoatPlace& place) {
  const FinishSystem* system = find_named(plan.job.systems, plan.job.batches[place.batch].system);
  const bool over_itself =
      place.again > 0 && std::ranges::none_of(plan.list.operations, [&](const Operation& op) {
        return op.takes_off && op.batch == place.batch && op.step == place.step &&
               op.coat == place.coat;
      });
  const std::size_t below =
      over_itself || place.coat > 1 || place.step == 0 ? place.step : place.step - 1;
  return static_cast<std::size_t>(find_named(plan.job.coatings, system->steps[below].coating) -
                                  plan.job.coatings.data());
}

/// Rule 2: coats that the person's hours keep from the window of the one below. What the log says
/// was sanded has missed nothing, and its class may have no window.
void window_notes(const Plan& plan, std::vector<Note>& notes) {
  const KeyedCoats sanded = sanded_by_log(plan.job);
  for (const CoatPlace& place : plan.keyed) {
    if (sanded.contains(place)) continue;
    const std::size_t under = coating_below(plan, place);
    // Without a window it is sanded by the log, for the person's own reasons. What is sanded
    // between its coats anyway is never put on within one.
    const Coating& below = plan.job.coatings[under];
    if (below.recoat_unsanded_within && !below.needs_sanding_between)
      notes.emplace_back(MissedWindowNote{place, under});
  }
}

/// Coats that are held to a window, and those with less to spare than the job wants.
void room_notes(const Plan& plan, std::vector<Note>& notes) {
  for (const auto& [place, spare] : plan.in_window)
    if (spare <= Duration()) notes.emplace_back(PutOffNote{place});
  const Duration wanted = plan.job.recoat_to_spare;
  for (const RecoatSlack& slack : recoat_slacks(plan)) {
    const DatedStep& step = plan.schedule.steps[slack.dated_step];
    const Duration spare = to_duration(slack.until - step.begin());
    if (spare < wanted)
      notes.emplace_back(
          LittleToSpareNote{place_of(plan.list.operations[step.operation]), spare, wanted});
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
      for (const std::string& line : advice.lines) notes.emplace_back(FillerNote{line});
}

/// Airing that keeps coats from being put on at all.
void airing_notes(const Plan& plan, std::vector<Note>& notes) {
  if (plan.aired && !plan.schedule.unplaced.empty())
    notes.emplace_back(PlainNote::too_cold_as_aired);
}

void rule_notes(const Plan& plan, std::vector<Note>& notes) {
  if (plan.job.faster_than_label) notes.emplace_back(PlainNote::faster_than_label);
  const bool late = std::any_of(
      plan.schedule.sessions.begin(), plan.schedule.sessions.end(), [&](const Session& session) {
        const LocalTime end = plan.job.calendar.zone.local(session.clean_up.end);
        return end.minute_of_day > plan.job.calendar.late_after;
      });
  if (late) notes.emplace_back(LateWorkNote{plan.job.calendar.late_after});
}

/// Lines of the log that do not count, the first in full.
void log_notes(const Plan& plan, std::vector<Note>& notes) {
  constexpr std::size_t most = 3;
  const Problems problems = left_out_problems(plan.job);
  for (std::size_t i = 0; i < std::min(most, problems.size()); ++i)
    notes.emplace_back(LeftOutNote{problems[i]});
  if (problems.size() > most) notes.emplace_back(MoreLeftOutNote{problems.size() - most});
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
