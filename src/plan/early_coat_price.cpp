#include "tackfree/plan/early_coat_price.hpp"

#include "tackfree/air/dried_share.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/early_coats.hpp"
#include "tackfree/plan/listed_work.hpp"
#include "tackfree/schedule/done_work.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace tackfree {

namespace {

using Clocks = std::vector<DryingClock>;

/// When all that is over; nothing where a wait lasts beyond the air that is known.
std::optional<Instant> waits_over(const WorkAtHand& work, const Clocks& clocks, std::size_t coat) {
  Instant over = work.list.operations[coat].done->time.begin;
  for (const Wait& wait : waits_of_coat(work.list, coat)) {
    const Operation& before = work.list.operations[wait.operation];
    if (!before.coating || !before.done) continue;
    const auto at = done_wait_over(work.job, work.list, clocks, wait);
    if (!at) return std::nullopt;
    over = std::max(over, *at);
  }
  return over;
}

bool is_early(const WorkAtHand& work, const Clocks& clocks, std::size_t coat) {
  const Operation& op = work.list.operations[coat];
  if (!op.coating || !op.done || !op.done->insisted || op.skipped()) return false;
  const auto over = waits_over(work, clocks, coat);
  return !over || *over > op.done->time.begin;
}

/// The first early coat that is not priced yet.
std::optional<std::size_t> next_early(const WorkAtHand& work, const Clocks& clocks) {
  std::optional<std::size_t> first;
  for (std::size_t i = 0; i < work.list.operations.size(); ++i) {
    const Operation& op = work.list.operations[i];
    if (!op.done || work.early.contains(op.key) || !is_early(work, clocks, i)) continue;
    if (!first || op.done->time.begin < work.list.operations[*first].done->time.begin) first = i;
  }
  return first;
}

/// Films of its own that a coat dries as, with what the one right under it still lacked when it
/// went on.
double films_wet(const WorkAtHand& work, const Operation& coat) {
  const Operation* below = nullptr;
  for (const Operation& op : work.list.operations) {
    if (&op == &coat) break;
    if (op.batch == coat.batch && op.coating && op.done && !op.skipped() && op.side == coat.side)
      below = &op;
  }
  if (below == nullptr) return 1;
  const Coating& under = work.job.coatings[*below->coating];
  const auto share =
      dried_share({&under, Stage::recoat, below->film_for(Stage::recoat), below->done->time.end},
                  work.air, work.job.room.air_speed, coat.done->time.begin);
  const double lacks = std::clamp(1 - share.value_or(0) / under.slowness, 0.0, 1.0);
  return 1 + lacks * below->film_ratio / coat.film_ratio;
}

/// When the plan of the hour at which the coat went on would have had it on.
std::optional<Instant> on_if_waited(const WorkAtHand& work, const Operation& coat, Job job,
                                    const WorkAsOf& work_as_of, solver::Effort& effort) {
  const Instant then = coat.done->time.begin;
  std::erase_if(job.history.entries,
                [&](const LogEntry& entry) { return entry.at > then || entry.step == coat.key; });
  job.last_plan.reset();
  auto waiting = work_as_of(job, then, work.early);
  if (!waiting) return std::nullopt;
  const std::int64_t kept = effort.left - effort.left / 2;
  effort.left -= kept;
  const auto clocks = drying_clocks(waiting->job, waiting->air);
  const Interval span = waiting->span();
  const DatedWork dated = date_work(std::move(*waiting), clocks, span, &effort);
  effort.left += kept;
  for (const DatedStep& step : dated.schedule.steps)
    if (dated.list.operations[step.operation].key == coat.key)
      return step.dries_from.value_or(step.end());
  return std::nullopt;
}

}  // namespace

void price_early_coats(WorkAtHand& work, const Job& given, const WorkAsOf& work_as_of,
                       solver::Effort& effort) {
  const bool insisted = std::ranges::any_of(work.list.operations, [](const Operation& op) {
    return op.coating && op.done && op.done->insisted;
  });
  if (!insisted) return;
  const Clocks clocks = drying_clocks(work.job, work.air);
  // Ends because each round prices one more coat of the log.
  while (const auto next = next_early(work, clocks)) {
    const Operation coat = work.list.operations[*next];
    EarlyCoat price{.counts_from = coat.done->time.end,
                    .films_wet = films_wet(work, work.list.operations[*next])};
    if (const auto over = waits_over(work, clocks, *next))
      price.counts_from = std::max(price.counts_from, *over);
    if (const auto waited = on_if_waited(work, coat, given, work_as_of, effort))
      price.counts_from = std::max(price.counts_from, *waited);
    work.early[coat.key] = price;
    work.list = listed_work(work);
  }
}

}  // namespace tackfree
