#include "tackfree/evening/open_faults.hpp"

#include "tackfree/logged/log_facts.hpp"
#include "tackfree/operations/repairs.hpp"

#include <algorithm>

namespace tackfree {

namespace {

std::string_view place_in(const Operation& op) {
  return std::string_view(op.key).substr(0, op.key.rfind('/'));
}

bool is_open(const OperationList& list, const Operation& coat, Fault fault) {
  const auto is_later_coat = [&](const Operation& op) {
    return op.coating && op.batch == coat.batch && op.done && !op.skipped() && &op > &coat &&
           op.side == coat.side;
  };
  if (fault == Fault::tacky)
    return !coat.done->dry_since && std::ranges::none_of(list.operations, is_later_coat);
  return std::ranges::any_of(list.operations, [&](const Operation& op) {
    return op.kind == OperationKind::repair && op.fault == fault && !op.done &&
           place_in(op) == place_in(coat);
  });
}

}  // namespace

std::vector<OpenFault> open_faults(const Job& job, const OperationList& list) {
  std::vector<OpenFault> open;
  for (const LogEntry& entry : job.history.entries) {
    const Operation* coat = entry.fault ? operation_called(list, entry.step) : nullptr;
    if (coat == nullptr || !coat->coating || !coat->done || !is_open(list, *coat, *entry.fault))
      continue;
    const auto index = static_cast<std::size_t>(coat - list.operations.data());
    const bool known = std::ranges::any_of(open, [&](const OpenFault& each) {
      return each.coat == index && each.fault == *entry.fault;
    });
    if (known) continue;
    open.push_back(
        {index, *entry.fault, repair_advice(job, job.coatings.at(*coat->coating), *entry.fault)});
  }
  return open;
}

}  // namespace tackfree
