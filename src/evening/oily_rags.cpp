#include "tackfree/evening/oily_rags.hpp"

#include <algorithm>

namespace tackfree {

bool leaves_oily_rags(const Job& job, const OperationList& list, const Operation& work) {
  const auto oxidises = [&](const Operation& op) {
    return op.coating && job.coatings.at(*op.coating).dries_by_oxidation;
  };
  if (!work.grit) return oxidises(work);
  return std::ranges::any_of(
      work.waits, [&](const Wait& wait) { return oxidises(list.operations.at(wait.operation)); });
}

OilyRags oily_rags(const Job& job, const OperationList& list, Instant now) {
  OilyRags rags;
  for (const LogEntry& entry : job.history.entries)
    if (entry.kind == LogKind::rags && entry.at <= now)
      rags.dealt_with = std::max(rags.dealt_with.value_or(entry.at), entry.at);
  bool any = false;
  for (const Operation& op : list.operations) {
    if (!op.done || op.skipped() || !leaves_oily_rags(job, list, op)) continue;
    any = true;
    const Instant left = op.done->time.end;
    if (rags.dealt_with && left <= *rags.dealt_with) continue;
    rags.out_since = std::min(rags.out_since.value_or(left), left);
  }
  if (!any) rags.dealt_with.reset();
  return rags;
}

}  // namespace tackfree
