#include "tackfree/words/ready_words.hpp"

#include "tackfree/plan/due_dates.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <optional>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// When the last batch is cured; nothing when one is not within the plan.
std::optional<Instant> cured_at(const Schedule& schedule) {
  std::optional<Instant> last;
  for (const DatedOutcome& outcome : schedule.outcomes) {
    if (outcome.stage != Stage::full_cure) continue;
    if (!outcome.at) return std::nullopt;
    last = std::max(last, outcome.at);
  }
  return last;
}

/// When the last hardware is on; nothing where that is by the time of light use or there is none.
std::optional<Instant> hardware_on_later(const Plan& plan) {
  std::optional<Instant> last = plan.schedule.ready_at;
  for (const DatedStep& step : plan.schedule.steps)
    if (plan.list.operations.at(step.operation).kind == OperationKind::fit_hardware)
      last = std::max(last, std::optional(step.end()));
  return last == plan.schedule.ready_at ? std::nullopt : last;
}

bool is_of_hours(HeldBy by) {
  return by == HeldBy::calendar || by == HeldBy::previous_step || by == HeldBy::person ||
         by == HeldBy::now || by == HeldBy::due;
}

/// The last reason that is more than hours of work; that the last plan had it then counts only
/// where there is no other. Nothing where there is none.
const Held* binding(const DatedStep& step) {
  const Held* last = nullptr;
  for (const Held& held : step.held)
    if (!is_of_hours(held.by) &&
        (held.by != HeldBy::last_plan || last == nullptr || last->by == HeldBy::last_plan))
      last = &held;
  return last;
}

/// What keeps the piece waiting, as a clause that goes on with `until`.
std::string held_clause(const Held& held, std::string_view piece) {
  switch (held.by) {
    case HeldBy::air:
      return gate_clause(held.gate.value_or(Gate::too_cold), piece);
    case HeldBy::drying:
      return fmt::format("the coat on {} has to dry", piece);
    case HeldBy::quiet_hours:
      return "quiet hours keep the sander off";
    case HeldBy::dust:
      return fmt::format("sanding dust and wet coats are kept apart, so {} has to wait", piece);
    case HeldBy::coats_a_day:
      return fmt::format("no more coats go on {} in one day", piece);
    case HeldBy::pin:
      return fmt::format("the date you set keeps {} waiting", piece);
    case HeldBy::no_coating_day:
      return "you allow no coating";
    case HeldBy::not_before:
      return fmt::format("you do not want to begin {}", piece);
    case HeldBy::space:
      return fmt::format("there is no space to dry {}", piece);
    case HeldBy::last_plan:
      return fmt::format("the last plan keeps {} waiting", piece);
    default:
      return fmt::format("other work goes before {}", piece);
  }
}

/// The step, or where its own reasons say nothing, the dusting off right before it.
const DatedStep& held_step(const Plan& plan, const DatedStep& step) {
  if (binding(step) != nullptr || step.operation == 0) return step;
  const bool dusted = plan.list.operations.at(step.operation - 1).kind == OperationKind::dust_off;
  const auto before =
      std::ranges::find(plan.schedule.steps, step.operation - 1, &DatedStep::operation);
  return dusted && before != plan.schedule.steps.end() ? *before : step;
}

std::string best_case(const Plan& plan, const Figures& figures) {
  const Instant soonest = plan.schedule.proof->ready_no_sooner_than;
  return fmt::format("at best it could be ready {}, {} sooner", figures.moment(soonest),
                     wait_text(to_duration(*plan.schedule.ready_at - soonest)));
}

}  // namespace

std::string ready_words(const Plan& plan, const Figures& figures) {
  if (!plan.schedule.ready_at) return "No date yet: some work finds no time, or does not dry.";
  const auto cured = cured_at(plan.schedule);
  const auto hardware = hardware_on_later(plan);
  const Instant ready = *plan.schedule.ready_at;
  std::string text =
      ready <= plan.now
          ? fmt::format("Since {}, for light use.", figures.moment(ready))
          : fmt::format("{}, for light use.", figures.moment(figures.full_hour_up(ready)));
  if (hardware) text += fmt::format(" Hardware on {}.", figures.day(*hardware));
  if (!cured)
    return fmt::format("{} Fully cured after {}.", text, figures.day(plan.schedule.span.end));
  return fmt::format("{} Fully cured {}{}.", text, *cured <= plan.now ? "since " : "on ",
                     figures.day(*cured));
}

std::string holding_words(const Plan& plan, const StepWords& words) {
  const auto last = last_batch(plan);
  if (!last) return {};
  const std::vector<DecidingWait> waits = deciding_waits(plan, *last);
  if (waits.empty() || waits.front().length < one_day) return {};
  const DatedStep& step = plan.schedule.steps.at(waits.front().dated_step);
  const Operation& op = plan.list.operations.at(step.operation);
  const std::string piece = plan.job.batches.size() < 2
                                ? std::string("it")
                                : cut_inside(longest_name, plan.job.batches.at(op.batch).name);
  const DatedStep& held = held_step(plan, step);
  const Held* reason = binding(held);
  const bool no_hours = reason != nullptr && held.held.back().by == HeldBy::calendar &&
                        held.begin() - reason->until >= one_day;
  const bool slight =
      reason != nullptr && (reason->by == HeldBy::dust || reason->by == HeldBy::quiet_hours);
  std::string clause = fmt::format("your hours go to other work before {}", piece);
  if (reason != nullptr) clause = held_clause(*reason, piece);
  if (slight && no_hours)
    return fmt::format("you have no hours for {} until {}, a wait of {}.", piece,
                       words.figures().day(step.begin()),
                       wait_text(to_duration(waits.front().length)));
  return fmt::format("{}{} until {}, a wait of {}.", clause,
                     no_hours ? ", and you have no hours" : "", words.figures().day(step.begin()),
                     wait_text(to_duration(waits.front().length)));
}

std::string proof_words(const Plan& plan, const Figures& figures) {
  if (!plan.schedule.proof || !plan.schedule.ready_at || *plan.schedule.ready_at <= plan.now)
    return {};
  const Proof& proof = *plan.schedule.proof;
  std::string text;
  if (plan.job.aim == Aim::ready)
    text = !proof.earliest_ready ? capitalized(best_case(plan, figures)) + " (proved)."
                                 : "Nothing faster is possible with your hours in this weather "
                                   "(proved).";
  else if (proof.fewest_sessions)
    text = fmt::format("No plan needs fewer coating sessions, and {} (proved).",
                       proof.earliest_ready ? "none with as few is ready sooner"
                                            : "with as few " + best_case(plan, figures));
  else
    text =
        proof.earliest_ready
            ? "With this many coating sessions nothing faster is possible (proved)."
            : fmt::format("With this many coating sessions {} (proved).", best_case(plan, figures));
  if (!plan.aired) return text;
  return text + (plan.aired->every_chance
                     ? " This counts the room as open whenever you could be coating."
                     : " This counts the room as aired as here.");
}

std::string moved_words(const Plan& plan, const Figures& figures) {
  if (!plan.job.last_plan) return {};
  const auto& last = *plan.job.last_plan;
  std::vector<std::string> moved;
  const Minutes later = last.ready_at && plan.schedule.ready_at
                            ? *plan.schedule.ready_at - *last.ready_at
                            : Minutes(0);
  if (later >= one_hour || later <= -one_hour)
    moved.push_back(fmt::format("ready {} {}",
                                wait_text(to_duration(later < Minutes(0) ? -later : later)),
                                later < Minutes(0) ? "sooner" : "later"));
  if (!plan.moves.empty())
    moved.push_back(
        count_text(static_cast<double>(plan.moves.size()), "step moved", "steps moved"));
  return fmt::format("Since the plan of {}: {}.", figures.moment(last.now),
                     moved.empty() ? "nothing moved" : fmt::format("{}", fmt::join(moved, ", ")));
}

}  // namespace tackfree
