#include "tackfree/plan/early_coats.hpp"

#include "tackfree/air/recoat_window.hpp"
#include "tackfree/operations/sanding.hpp"
#include "tackfree/operations/unsanded_coats.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string named_coat_of(const Plan& plan, const Operation& op) {
  const Batch& batch = plan.job.batches[op.batch];
  const FinishSystem* system = find_named(plan.job.systems, batch.system);
  return fmt::format("Batch \"{}\", {} coat {}{}", batch.name, system->steps[op.step].name, op.coat,
                     op.side == Side::both ? "" : fmt::format(" ({})", word_for(op.side)));
}

std::string local_words(const Plan& plan, Instant at) {
  const LocalTime local = plan.job.calendar.zone.local(at);
  return fmt::format("{} {}", iso_date(local.on), iso_clock(local.minute_of_day));
}

constexpr std::string_view may_peel =
    "The coat may peel. Score it in a hidden place, press tape on and pull it off before you rely "
    "on it; if it lifts, sand back to what holds.";

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
      notes.push_back({"adhesion", fmt::format("{} went on after the coat below had stopped taking "
                                               "another one unsanded, and the log has no sanding "
                                               "between them. {} If you did sand, log that.",
                                               named_coat_of(plan, op), may_peel)});
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
  for (const Operation& op : plan.list.operations) {
    if (op.done && op.done->counts_from)
      notes.push_back(
          {"early coat",
           fmt::format(
               "{} went on before what is below was dry. It may stay soft, wrinkle, or craze "
               "later. The plan takes it as put on at {}, when waiting would have had it on, "
               "and as thick as {:.1f} coats: assumed. Try it with your thumb before you "
               "trust those hours.",
               named_coat_of(plan, op), local_words(plan, *op.done->counts_from),
               op.done->films_wet)});
    if (op.kind == OperationKind::sand_between && op.skipped())
      notes.push_back({"adhesion", fmt::format("{}: the sanding before it was left out. {}",
                                               named_coat_of(plan, op), may_peel)});
  }
  shut_window_notes(plan, notes);
  return notes;
}

}  // namespace tackfree
