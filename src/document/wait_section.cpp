#include "tackfree/document/wait_section.hpp"

#include "tackfree/document/tonight_work.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <string>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// What is done to a batch, as one says it before the batch's name.
std::string_view deed(const Plan& plan, const Operation& work) {
  switch (work.kind) {
    case OperationKind::raise_grain:
      return "damp";
    case OperationKind::fill_pores:
      return "fill the pores of";
    case OperationKind::dust_off:
    case OperationKind::coat:
      return "coat";
    case OperationKind::wipe_off:
      return "wipe off";
    case OperationKind::turn_over:
      return "turn or move";
    case OperationKind::fit_hardware:
      return "fit the hardware to";
    case OperationKind::finishing_touch:
      return plan.job.data.touches.at(work.touch.value()).title;
    case OperationKind::repair:
      return work.grit ? "sand or coat" : "repair or coat";
    case OperationKind::sand_between:
      return "sand or coat";
    case OperationKind::sand_bare:
    case OperationKind::sand_raised:
    case OperationKind::sand_filler:
      break;
  }
  return "sand";
}

/// Lines about several batches, those alike joined.
struct WaitLine {
  bool over = false;
  std::string before;  ///< the deed, of waits that are not over
  std::vector<std::string> batches;
  std::string after;
};

class WaitLines {
 public:
  WaitLines(const Plan& plan, const StepWords& words)
      : plan_(plan), words_(words), figures_(words.figures()) {}

  std::vector<WaitLine> of(const std::vector<BatchWait>& waits) {
    const auto waits_on = [&](std::size_t batch) {
      return std::ranges::any_of(waits, [&](const BatchWait& wait) {
        return work_of(wait).batch == batch && !wait.is_over(plan_.now);
      });
    };
    for (const BatchWait& wait : waits) {
      const bool over = wait.is_over(plan_.now);
      if (over && waits_on(work_of(wait).batch)) continue;
      add(wait, over);
    }
    std::stable_partition(lines_.begin(), lines_.end(),
                          [](const WaitLine& line) { return !line.over; });
    return lines_;
  }

 private:
  const Operation& work_of(const BatchWait& wait) const {
    return plan_.list.operations.at(wait.operation);
  }

  void add(const BatchWait& wait, bool over) {
    WaitLine line{over,
                  over ? "" : std::string(deed(plan_, work_of(wait))),
                  {},
                  over ? tried(wait) : " " + before(wait) + ": " + reason(wait) + "."};
    const std::string name =
        cut_inside(longest_name, plan_.job.batches.at(work_of(wait).batch).name);
    const auto alike = std::ranges::find_if(lines_, [&](const WaitLine& other) {
      return other.over == over && other.before == line.before && other.after == line.after;
    });
    WaitLine& into = alike == lines_.end() ? lines_.emplace_back(std::move(line)) : *alike;
    if (std::ranges::find(into.batches, name) == into.batches.end()) into.batches.push_back(name);
  }

  std::string before(const BatchWait& wait) const {
    if (!wait.until) return "within this plan";
    const Duration left = to_duration(*wait.until - plan_.now);
    const bool today = figures_.local_date(*wait.until) == figures_.local_date(plan_.now);
    return fmt::format("before {} (in {})",
                       today ? figures_.clock(*wait.until) : figures_.moment(*wait.until),
                       left < hours(2) ? duration_text(left) : wait_text(left));
  }

  /// What is waited for, with its batch where that is another one.
  std::string title(const BatchWait& wait) const {
    const Operation& op = plan_.list.operations.at(wait.wait.operation);
    return op.batch == work_of(wait).batch ? words_.title(op) : words_.full_title(op);
  }

  std::string reason(const BatchWait& wait) const {
    const Operation& work = work_of(wait);
    switch (wait.by) {
      case HeldBy::drying:
        return drying(wait);
      case HeldBy::coats_a_day:
        return "these coats melt into each other; one more on the same day would stay soft";
      case HeldBy::dust:
        return work.grit ? "its dust would fall on coats that are still wet"
                         : "the sanding dust has to settle";
      case HeldBy::not_before:
        return "you set that date";
      default:
        break;
    }
    const Operation& first = plan_.list.operations.at(wait.wait.operation);
    const std::string name = title(wait);
    if (first.batch != work.batch && wait.wait.stage)
      return fmt::format("{} has to be {} first", name, reached_words(*wait.wait.stage));
    if (wait.wait.delay <= Duration()) return fmt::format("\"{}\" comes first", name);
    return first.grit ? fmt::format("the dust of \"{}\" has to settle", name)
                      : fmt::format("it has to dry after \"{}\"", name);
  }

  std::string drying(const BatchWait& wait) const {
    const std::string coat = title(wait);
    if (wait.wait.dry_for)
      return fmt::format(
          "{} needs {} of drying at the label's conditions before another kind goes "
          "over it",
          coat, wait_text(*wait.wait.dry_for));
    const Stage stage = wait.wait.stage.value_or(Stage::recoat);
    const bool repair = work_of(wait).kind == OperationKind::repair;
    std::string text;
    if (wait.wait.films > 1 && !repair)
      text = fmt::format("the last {} coats dry as one, and are ", wait.wait.films);
    else if (wait.wait.films > 1)
      text = fmt::format("{} is thicker at the fault, and there ", coat);
    else
      text = coat + " is ";
    constexpr double hardly = 0.01;
    text += wait.share && *wait.share >= hardly
                ? fmt::format("{} of the way to {}", percent_text(fraction(*wait.share)),
                              word_for(stage))
                : fmt::format("not {}", reached_words(stage));
    return text + (wait.failed ? "; it failed its test and gets more time" : "");
  }

  std::string tried(const BatchWait& wait) const {
    const std::string coat = title(wait);
    return fmt::format(
        ": {} should be {} by this estimate. Try it where it does not show.", coat,
        wait.wait.stage ? reached_words(*wait.wait.stage) : "dry enough for the next coating");
  }

  const Plan& plan_;
  const StepWords& words_;
  const Figures& figures_;
  std::vector<WaitLine> lines_;
};

}  // namespace

void write_batch_waits(Page& page, const Plan& plan, const std::vector<BatchWait>& waits,
                       const StepWords& words) {
  for (const WaitLine& line : WaitLines(plan, words).of(waits)) {
    const std::string names = fmt::format("{}", fmt::join(line.batches, ", "));
    if (line.over)
      page.paragraph(Lead::labelled("Try", answer_columns), names + line.after);
    else
      page.paragraph(Lead::labelled("Don't", answer_columns),
                     fmt::format("{} {}{}", line.before, names, line.after));
  }
}

}  // namespace tackfree
