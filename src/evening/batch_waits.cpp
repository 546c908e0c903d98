#include "tackfree/evening/batch_waits.hpp"

#include "tackfree/air/dried_share.hpp"
#include "tackfree/schedule/done_work.hpp"

#include <algorithm>
#include <utility>

namespace tackfree {

namespace {

/// What is done in one go: an operation with those that follow at a fixed distance.
struct OneGo {
  std::size_t first, last;
  bool holds(std::size_t operation) const { return first <= operation && operation <= last; }
};

class Waiting {
 public:
  Waiting(const Plan& plan, const std::vector<DryingClock>& clocks)
      : plan_(plan), job_(plan.job), operations_(plan.list.operations), clocks_(clocks) {}

  std::vector<BatchWait> result() {
    for (std::size_t first = 0; first < operations_.size();) {
      OneGo work{first, first};
      while (work.last + 1 < operations_.size() && operations_[work.last + 1].right_after)
        ++work.last;
      if (!operations_[first].done && is_next(work)) add(work);
      first = work.last + 1;
    }
    keep_first_of_each_batch();
    return std::move(all_);
  }

 private:
  /// Of several works that may come next on a batch, the one that may come first tells the hour.
  void keep_first_of_each_batch() {
    const auto sooner = [&](const BatchWait& a, const BatchWait& b) {
      const Instant never = Instant::max();
      return operations_[a.operation].batch == operations_[b.operation].batch &&
             !a.is_over(plan_.now) && a.until.value_or(never) < b.until.value_or(never);
    };
    const std::vector<BatchWait> all = all_;
    std::erase_if(all_, [&](const BatchWait& wait) {
      return std::ranges::any_of(all, [&](const BatchWait& other) { return sooner(other, wait); });
    });
  }

  /// Of its batch nothing is left to do before it.
  bool is_next(OneGo work) const {
    for (std::size_t i = work.first; i <= work.last; ++i)
      for (const Wait& wait : operations_[i].waits) {
        const Operation& before = operations_[wait.operation];
        if (before.batch == operations_[i].batch && !before.done && !work.holds(wait.operation))
          return false;
      }
    return true;
  }

  /// The work by which the rest of it is known: its coat, where there is one.
  std::size_t chief_of(OneGo work) const {
    for (std::size_t i = work.first; i <= work.last; ++i)
      if (operations_[i].kind == OperationKind::coat) return i;
    return work.first;
  }

  void add(OneGo work) {
    longest_.reset();
    const std::size_t chief = chief_of(work);
    for (std::size_t i = work.first; i <= work.last; ++i)
      for (const Wait& wait : operations_[i].waits)
        if (!work.holds(wait.operation)) waits_for(wait);
    for (const DustKept& kept : kept_by_dust(job_, plan_.list, clocks_, operations_[chief]))
      keep(kept.until, HeldBy::dust, {.operation = kept.operation});
    if (const auto date = job_.batches[operations_[chief].batch].rules.not_before)
      keep(date, HeldBy::not_before, {});
    if (!longest_) return;
    longest_->operation = chief;
    if (longest_->is_over(plan_.now) && longest_->by != HeldBy::drying) return;
    if (longest_->by == HeldBy::drying) dried(*longest_);
    all_.push_back(*longest_);
  }

  void waits_for(const Wait& wait) {
    HeldBy by = wait.stage || wait.dry_for ? HeldBy::drying : HeldBy::previous_step;
    if (wait.next_day) by = HeldBy::coats_a_day;
    const Operation& before = operations_[wait.operation];
    if (before.done) return keep(done_wait_over(job_, plan_.list, clocks_, wait), by, wait);
    keep(over_when_planned(wait), HeldBy::previous_step, wait);
  }

  /// Of work that has a time in the plan and is not done.
  std::optional<Instant> over_when_planned(const Wait& wait) const {
    const auto& steps = plan_.schedule.steps;
    const auto step = std::ranges::find(steps, wait.operation, &DatedStep::operation);
    if (step == steps.end()) return std::nullopt;
    auto over = wait_over(job_, plan_.list, clocks_, wait, step->dries_from.value_or(step->end()));
    if (over) *over += whole_minutes_up(wait.delay);
    return over;
  }

  /// Keeps what is over last; of two at once the first, as waits come before dust and dates.
  void keep(const std::optional<Instant>& until, HeldBy by, const Wait& wait) {
    const Instant never = Instant::max();
    if (longest_ && until.value_or(never) <= longest_->until.value_or(never)) return;
    longest_ = BatchWait{.until = until, .by = by, .wait = wait, .share = {}};
  }

  /// How far the coat is on its way.
  void dried(BatchWait& wait) const {
    const Operation& coat = operations_[wait.wait.operation];
    wait.failed = coat.done->not_dry_before.has_value();
    if (!wait.wait.stage) return;
    if (wait.is_over(plan_.now)) {
      wait.share = 1;
      return;
    }
    const Stage stage = *wait.wait.stage;
    const DryingCoat drying{&job_.coatings.at(*coat.coating), stage,
                            coat.film_for(stage) * wait.wait.films, coat.done->dries_from()};
    const auto had = dried_share(drying, plan_.air, job_.room.air_speed, plan_.now);
    if (!had) return;
    // By the hours that are left, as the clock and the trials have them; of a coat that nothing
    // makes ready, by its law.
    const auto needs = wait.until ? dried_share(drying, plan_.air, job_.room.air_speed, *wait.until)
                                  : std::optional(1.0);
    if (needs && *needs > 0) wait.share = std::min(0.99, *had / *needs);
  }

  const Plan& plan_;
  const Job& job_;
  const std::vector<Operation>& operations_;
  const std::vector<DryingClock>& clocks_;
  std::optional<BatchWait> longest_;
  std::vector<BatchWait> all_;
};

}  // namespace

std::vector<BatchWait> batch_waits(const Plan& plan, const std::vector<DryingClock>& clocks) {
  return Waiting(plan, clocks).result();
}

}  // namespace tackfree
