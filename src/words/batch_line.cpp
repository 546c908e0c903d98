#include "tackfree/words/batch_line.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// One or two words that fit beside each other on a day.
std::string mark_of(const Plan& plan, const Operation& op) {
  switch (op.kind) {
    case OperationKind::sand_bare:
    case OperationKind::sand_raised:
    case OperationKind::sand_between:
    case OperationKind::sand_filler:
      return "sand";
    case OperationKind::coat:
      return fmt::format("coat {}{}", op.coat, op.side == Side::back ? " back" : "");
    case OperationKind::turn_over:
      return "turn";
    case OperationKind::fit_hardware:
      return "fit";
    case OperationKind::finishing_touch:
      return plan.job.data.touches.at(op.touch.value()).title;
    case OperationKind::repair:
      return "repair";
    case OperationKind::fill_pores:
      return "fill";
    case OperationKind::raise_grain:
      return "damp";
    case OperationKind::dust_off:
    case OperationKind::wipe_off:
      break;
  }
  return {};  // goes with the coat
}

void add_word(std::string& text, const std::string& word, std::string_view between) {
  if (word.empty() || text.ends_with(word)) return;
  text += (text.empty() ? "" : std::string(between)) + word;
}

}  // namespace

std::vector<WorkGroup> work_groups(const Plan& plan, const StepWords& words, std::size_t batch) {
  constexpr Minutes break_within{90};
  std::vector<std::pair<Interval, const Operation*>> pieces;
  for (const DatedStep& step : plan.schedule.steps) {
    const Operation& op = plan.list.operations.at(step.operation);
    if (op.batch == batch)
      for (const Interval& piece : step.pieces) pieces.emplace_back(piece, &op);
  }
  std::ranges::stable_sort(pieces, {}, [](const auto& piece) { return piece.first; });
  std::vector<WorkGroup> groups;
  for (const auto& [time, op] : pieces) {
    const bool goes_on = !groups.empty() && time.begin - groups.back().time.end <= break_within &&
                         words.figures().local_date(time.begin) ==
                             words.figures().local_date(groups.back().time.begin);
    if (!goes_on) groups.push_back({.time = time});
    groups.back().time.end = std::max(groups.back().time.end, time.end);
    add_word(groups.back().mark, mark_of(plan, *op), ", ");
    add_word(groups.back().whole, words.title(*op), "; ");
  }
  return groups;
}

WaitKind kind_of(HeldBy by) {
  if (by == HeldBy::drying || by == HeldBy::coats_a_day) return WaitKind::drying;
  return by == HeldBy::air ? WaitKind::air : WaitKind::person;
}

std::string_view words_for(HeldBy by) {
  switch (by) {
    case HeldBy::drying:
      return "dries";
    case HeldBy::coats_a_day:
      return "no more coats that day";
    case HeldBy::air:
      return "waits: air unfit for the coat";
    case HeldBy::quiet_hours:
      return "waits: quiet hours for the sander";
    case HeldBy::dust:
      return "waits: keeps sanding dust off wet coats";
    case HeldBy::person:
      return "waits: you are busy with other work";
    case HeldBy::last_plan:
      return "waits: kept as last planned";
    case HeldBy::order:
      return "waits: put off for a better whole";
    case HeldBy::pin:
      return "waits for the day that is set";
    case HeldBy::no_coating_day:
      return "waits: no coating that day";
    case HeldBy::not_before:
      return "waits until it may be begun";
    case HeldBy::space:
      return "waits for space to dry";
    case HeldBy::now:
    case HeldBy::previous_step:
    case HeldBy::due:
    case HeldBy::calendar:
      break;
  }
  return "waits for your hours";
}

}  // namespace tackfree
