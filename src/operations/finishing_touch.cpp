#include "tackfree/operations/finishing_touch.hpp"

#include "tackfree/base/name.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The sides' last coats of a batch; empty where it has no finish.
std::vector<std::size_t> last_coats(const OperationList& list, std::size_t batch) {
  const auto found = std::ranges::find(list.outcomes, batch, &Outcome::batch);
  return found == list.outcomes.end() ? std::vector<std::size_t>() : found->coats;
}

/// The side that shows; the whole of what is coated on one side only or at once.
Area shown(const OperationList& list, const std::vector<std::size_t>& coats) {
  return list.operations[coats.back()].area;
}

}  // namespace

void add_finishing_touch(const Job& job, std::size_t batch, OperationList& list) {
  const FinishSystem* system = find_named(job.systems, job.batches[batch].system);
  const std::vector<std::size_t> coats = last_coats(list, batch);
  if (system == nullptr || system->after.empty() || coats.empty()) return;
  const auto touch = std::ranges::find(job.data.touches, system->after, &FinishingTouch::key);
  if (touch == job.data.touches.end()) return;
  const Operation& last = list.operations[coats.back()];
  Operation op;
  op.key = fmt::format("{}/{}/coat-{}/{}/{}", slug(job.batches[batch].name),
                       slug(system->steps[last.step].name), last.coat, word_for(Side::both),
                       slug(touch->title));
  op.kind = OperationKind::finishing_touch;
  op.batch = batch;
  op.step = last.step;
  op.coat = last.coat;
  op.coats = last.coats;
  op.area = shown(list, coats);
  op.work = op.area / touch->rate.value;
  op.touch = static_cast<std::size_t>(touch - job.data.touches.begin());
  op.how = touch->how;
  for (const std::size_t coat : coats)
    op.waits.push_back({.operation = coat, .stage = touch->waits_for});
  list.operations.push_back(std::move(op));
}

}  // namespace tackfree
