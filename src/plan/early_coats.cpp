#include "tackfree/plan/early_coats.hpp"

#include "tackfree/air/dried_share.hpp"
#include "tackfree/air/recoat_window.hpp"
#include "tackfree/operations/sanding.hpp"
#include "tackfree/operations/unsanded_coats.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/schedule/done_work.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace tackfree {

namespace {

using Clocks = std::vector<DryingClock>;

/// Calls `found(operation, wait)` for what a coat and its dusting off wait for, and for what
/// turning and sanding before them wait for in turn.
template <class Found>
void each_wait_of_coat(const OperationList& list, std::size_t coat, const Found& found) {
  std::vector<std::size_t> open{coat};
  for (std::size_t i = coat; list.operations[i].right_after; --i) open.push_back(i - 1);
  // Ends because work only ever waits for what stands before it in the list.
  while (!open.empty()) {
    const std::size_t at = open.back();
    open.pop_back();
    for (const Wait& wait : list.operations[at].waits) {
      const Operation& before = list.operations[wait.operation];
      found(at, wait);
      if (!before.coating && before.batch == list.operations[coat].batch)
        open.push_back(wait.operation);
    }
  }
}

/// When all that is over; nothing where a wait lasts beyond the air that is known.
std::optional<Instant> waits_over(const Plan& plan, const Clocks& clocks, std::size_t coat) {
  std::optional<Instant> over = plan.list.operations[coat].done->time.begin;
  each_wait_of_coat(plan.list, coat, [&](std::size_t, const Wait& wait) {
    const Operation& before = plan.list.operations[wait.operation];
    if (!over || !before.coating || !before.done) return;
    const auto at = done_wait_over(plan.job, plan.list, clocks, wait);
    over = at ? std::optional(std::max(*over, *at)) : std::nullopt;
  });
  return over;
}

bool is_early(const Plan& plan, const Clocks& clocks, std::size_t coat) {
  const Operation& op = plan.list.operations[coat];
  if (!op.coating || !op.done || !op.done->insisted || op.skipped()) return false;
  const auto over = waits_over(plan, clocks, coat);
  return !over || *over > op.done->time.begin;
}

/// The first early coat that is not priced yet.
std::optional<std::size_t> next_early(const Plan& plan, const Clocks& clocks) {
  std::optional<std::size_t> first;
  for (std::size_t i = 0; i < plan.list.operations.size(); ++i) {
    const Operation& op = plan.list.operations[i];
    if (!op.done || plan.early.contains(op.key) || !is_early(plan, clocks, i)) continue;
    if (!first || op.done->time.begin < plan.list.operations[*first].done->time.begin) first = i;
  }
  return first;
}

/// Films of its own that a coat dries as, with what the one right under it still lacked when it
/// went on.
double films_wet(const Plan& plan, const Operation& coat) {
  const Operation* below = nullptr;
  for (const Operation& op : plan.list.operations) {
    if (&op == &coat) break;
    if (op.batch == coat.batch && op.coating && op.done && !op.skipped() && op.side == coat.side)
      below = &op;
  }
  if (below == nullptr) return 1;
  const Coating& under = plan.job.coatings[*below->coating];
  const auto share =
      dried_share({&under, Stage::recoat, below->film_for(Stage::recoat), below->done->time.end},
                  plan.air, plan.job.room.air_speed, coat.done->time.begin);
  const double lacks = std::clamp(1 - share.value_or(0) / under.slowness, 0.0, 1.0);
  return 1 + lacks * below->film_ratio / coat.film_ratio;
}

/// When the plan of the hour at which the coat went on would have had it on.
std::optional<Instant> on_if_waited(const Plan& plan, const Operation& coat, Job job,
                                    const StandingAt& standing_at, solver::Effort& effort) {
  const Instant then = coat.done->time.begin;
  std::erase_if(job.history.entries,
                [&](const LogEntry& entry) { return entry.at > then || entry.step == coat.key; });
  job.last_plan.reset();
  auto waiting = standing_at(std::move(job), then, plan.early);
  if (!waiting) return std::nullopt;
  const Interval span{waiting->now, waiting->now + whole_minutes_up(waiting->job.horizon)};
  const std::int64_t kept = effort.left - effort.left / 2;
  effort.left -= kept;
  date_work(*waiting, drying_clocks(waiting->job, waiting->air), span, &effort);
  effort.left += kept;
  for (const DatedStep& step : waiting->schedule.steps)
    if (waiting->list.operations[step.operation].key == coat.key)
      return step.dries_from.value_or(step.end());
  return std::nullopt;
}

/// Coats of the log over one whose window had shut, without sanding in the log.
void shut_window_notes(const Plan& plan, std::vector<Note>& notes) {
  UnsandedCoats<const Operation*> unsanded;
  for (const Operation& op : plan.list.operations) {
    if (!op.done) continue;
    const auto below = unsanded.pass(op, &op);
    if (!below || !(*below)->done) continue;
    const Coating& under = plan.job.coatings[*(*below)->coating];
    if (!key_grit(under)) continue;
    const auto until = recoat_unsanded_until(under, plan.air, (*below)->done->time.end);
    if (until && op.done->time.begin > *until)
      notes.emplace_back(AdhesionNote{static_cast<std::size_t>(&op - plan.list.operations.data()),
                                      AdhesionNote::Cause::window_shut});
  }
}

}  // namespace

void price_early_coats(Plan& plan, const Job& given, const StandingAt& standing_at,
                       solver::Effort& effort) {
  const bool insisted = std::ranges::any_of(plan.list.operations, [](const Operation& op) {
    return op.coating && op.done && op.done->insisted;
  });
  if (!insisted) return;
  const Clocks clocks = drying_clocks(plan.job, plan.air);
  // Ends because each round prices one more coat of the log.
  while (const auto next = next_early(plan, clocks)) {
    const Operation coat = plan.list.operations[*next];
    EarlyCoat price{.counts_from = coat.done->time.end,
                    .films_wet = films_wet(plan, plan.list.operations[*next])};
    if (const auto over = waits_over(plan, clocks, *next))
      price.counts_from = std::max(price.counts_from, *over);
    if (const auto waited = on_if_waited(plan, coat, given, standing_at, effort))
      price.counts_from = std::max(price.counts_from, *waited);
    plan.early[coat.key] = price;
    list_work(plan);
  }
}

void mark_early_coats(Plan& plan) {
  std::vector<Operation>& operations = plan.list.operations;
  for (std::size_t i = 0; i < operations.size(); ++i) {
    const auto found = plan.early.find(operations[i].key);
    if (found == plan.early.end() || !operations[i].done) continue;
    operations[i].done->counts_from = found->second.counts_from;
    operations[i].done->films_wet = found->second.films_wet;
    each_wait_of_coat(plan.list, i, [&](std::size_t, const Wait& wait) {
      Operation& before = operations[wait.operation];
      if (before.kind == OperationKind::sand_between && before.done && !before.done->logged)
        before.done->skipped = true;
    });
  }
}

std::vector<Note> early_coat_notes(const Plan& plan) {
  std::vector<Note> notes;
  for (std::size_t i = 0; i < plan.list.operations.size(); ++i) {
    const Operation& op = plan.list.operations[i];
    if (op.done && op.done->counts_from) notes.emplace_back(EarlyCoatNote{i});
    if (op.kind == OperationKind::sand_between && op.skipped())
      notes.emplace_back(AdhesionNote{i, AdhesionNote::Cause::left_out});
  }
  shut_window_notes(plan, notes);
  return notes;
}

}  // namespace tackfree
