#include "tackfree/plan/shop_notes.hpp"

#include "tackfree/takeoff/lots.hpp"

#include <algorithm>

namespace tackfree {

namespace {

void lot_notes(const Plan& plan, std::vector<Note>& notes) {
  const Job& job = plan.job;
  for (std::size_t b = 0; b < job.batches.size(); ++b) {
    const BatchRules& rules = job.batches[b].rules;
    if (rules.lot != 1) continue;
    double sum = 0;
    for (std::size_t other = 0; other < job.batches.size(); ++other)
      if (job.batches[other].rules.lot_of == rules.lot_of) sum += space_taken(job, other);
    notes.emplace_back(LotsNote{.batch = b,
                                .takes = sum,
                                .has = space_in_room(job, b).value_or(0),
                                .in_places = job.rooms.at(*rules.room).places.has_value()});
  }
}

void pin_notes(const Plan& plan, std::vector<Note>& notes) {
  for (std::size_t b = 0; b < plan.job.batches.size(); ++b) {
    const Batch& batch = plan.job.batches[b];
    const FinishSystem* system = find_named(plan.job.systems, batch.system);
    for (std::size_t p = 0; p < batch.rules.pins.size(); ++p) {
      const Pin& pin = batch.rules.pins[p];
      const auto& all = plan.list.operations;
      const bool holds = std::any_of(all.begin(), all.end(), [&](const Operation& op) {
        return op.kind == OperationKind::coat && op.batch == b && op.coat == pin.coat &&
               system->steps.at(op.step).name == pin.step &&
               (!pin.side || op.side == *pin.side || op.side == Side::both);
      });
      if (!holds) notes.emplace_back(LostPinNote{b, p});
    }
  }
}

}  // namespace

std::vector<Note> shop_notes(const Plan& plan) {
  std::vector<Note> notes;
  lot_notes(plan, notes);
  pin_notes(plan, notes);
  if (plan.job.people.size() > 1) notes.emplace_back(PlainNote::several_people_tried);
  return notes;
}

}  // namespace tackfree
