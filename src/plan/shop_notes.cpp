#include "tackfree/plan/shop_notes.hpp"

#include "tackfree/takeoff/lots.hpp"

#include <algorithm>

#include <fmt/format.h>

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
    const DryingRoom& room = job.rooms.at(*rules.room);
    const std::string_view unit = room.places ? "places" : "m2";
    notes.push_back({"lots", fmt::format("Batch \"{}\" takes {:.3g} {} to dry and \"{}\" has "
                                         "{:.3g}: it goes through in {} lots. Parts count as "
                                         "lying flat; give the batch its own \"space_m2\" where "
                                         "they stand or hang.",
                                         rules.lot_of, sum, unit, room.name,
                                         space_in_room(job, b).value_or(0), rules.lots)});
  }
}

void pin_notes(const Plan& plan, std::vector<Note>& notes) {
  for (std::size_t b = 0; b < plan.job.batches.size(); ++b) {
    const Batch& batch = plan.job.batches[b];
    const FinishSystem* system = find_named(plan.job.systems, batch.system);
    for (const Pin& pin : batch.rules.pins) {
      const auto& all = plan.list.operations;
      const bool holds = std::any_of(all.begin(), all.end(), [&](const Operation& op) {
        return op.kind == OperationKind::coat && op.batch == b && op.coat == pin.coat &&
               system->steps.at(op.step).name == pin.step &&
               (!pin.side || op.side == *pin.side || op.side == Side::both);
      });
      if (!holds)
        notes.push_back({"pin", fmt::format("Coat {} of \"{}\" is set for {}, but batch \"{}\" has "
                                            "no such coat: the date holds nothing.",
                                            pin.coat, pin.step, iso_date(pin.on), batch.name)});
    }
  }
}

}  // namespace

std::vector<Note> shop_notes(const Plan& plan) {
  std::vector<Note> notes;
  lot_notes(plan, notes);
  pin_notes(plan, notes);
  if (plan.job.people.size() > 1)
    notes.push_back({"people",
                     "With several people many orders of work were tried and the best "
                     "one kept. Work in one go stays within hours in which the same people "
                     "are there."});
  return notes;
}

}  // namespace tackfree
