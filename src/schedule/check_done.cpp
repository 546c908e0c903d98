#include "tackfree/schedule/check_done.hpp"

#include <fmt/format.h>

namespace tackfree {

std::vector<std::string> wrong_accounts(const OperationList& list, const Schedule& schedule) {
  std::vector<std::string> wrong;
  std::vector<int> seen(list.operations.size(), 0);
  for (const DatedStep& step : schedule.steps) {
    ++seen.at(step.operation);
    const Operation& op = list.operations[step.operation];
    if (!op.done) continue;
    if (step.pieces != std::vector{op.done->time})
      wrong.push_back(op.key + " is done and was moved");
    if (op.done->time.end > schedule.span.begin)
      wrong.push_back(op.key + " is done after the plan's now");
    if (step.session) wrong.push_back(op.key + " is done and stands in a session to come");
  }
  for (const Unplaced& missing : schedule.unplaced) ++seen.at(missing.operation);
  for (std::size_t i = 0; i < seen.size(); ++i)
    if (seen[i] != 1)
      wrong.push_back(
          fmt::format("{} is dated or given up {} times", list.operations[i].key, seen[i]));
  return wrong;
}

std::optional<bool> tried(const Job& job, const Operation& coat, Stage stage, Instant at,
                          int films) {
  if (!coat.done) return std::nullopt;
  const Done& done = *coat.done;
  if (done.not_dry_before && stage >= done.not_dry_to && at < *done.not_dry_before) return false;
  if (!done.dry_since || done.counts_from || films > 1 || depth_of(stage) != Depth::recoat ||
      at < *done.dry_since)
    return std::nullopt;
  const Coating& coating = job.coatings.at(*coat.coating);
  const auto& label = coating.label_after.at(index_of(stage));
  if (job.faster_than_label || !label) return true;
  Duration least = label->value;
  for (const LabelPoint& point : coating.label_points.at(index_of(stage)))
    least = std::min(least, point.after);
  if (to_duration(at - done.time.end) + minutes(1e-6) < least) return std::nullopt;
  return true;
}

}  // namespace tackfree
