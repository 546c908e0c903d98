#include "tackfree/plan/early_coats.hpp"

#include "tackfree/air/recoat_window.hpp"
#include "tackfree/operations/sanding.hpp"
#include "tackfree/operations/unsanded_coats.hpp"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace tackfree {

namespace {

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

std::vector<Wait> waits_of_coat(const OperationList& list, std::size_t coat) {
  std::vector<Wait> waits;
  std::vector<std::size_t> open{coat};
  for (std::size_t i = coat; list.operations[i].right_after; --i) open.push_back(i - 1);
  // Ends because work only ever waits for what stands before it in the list.
  while (!open.empty()) {
    const std::size_t at = open.back();
    open.pop_back();
    for (const Wait& wait : list.operations[at].waits) {
      const Operation& before = list.operations[wait.operation];
      waits.push_back(wait);
      if (!before.coating && before.batch == list.operations[coat].batch)
        open.push_back(wait.operation);
    }
  }
  return waits;
}

void mark_early_coats(OperationList& list, const std::map<std::string, EarlyCoat>& early) {
  std::vector<Operation>& operations = list.operations;
  for (std::size_t i = 0; i < operations.size(); ++i) {
    const auto found = early.find(operations[i].key);
    if (found == early.end() || !operations[i].done) continue;
    operations[i].done->counts_from = found->second.counts_from;
    operations[i].done->films_wet = found->second.films_wet;
    for (const Wait& wait : waits_of_coat(list, i)) {
      Operation& before = operations[wait.operation];
      if (before.kind == OperationKind::sand_between && before.done && !before.done->logged)
        before.done->skipped = true;
    }
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
