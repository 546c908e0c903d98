#include "tackfree/document/progress_section.hpp"

#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

class Progress {
 public:
  Progress(Page& page, const Plan& plan, const StepWords& words)
      : page_(page), plan_(plan), words_(words), figures_(words.figures()) {}

  void done() {
    std::vector<std::string> unlogged;
    for (const DatedStep& step : plan_.schedule.steps) {
      const Operation& op = plan_.list.operations.at(step.operation);
      if (!op.done || op.kind == OperationKind::dust_off || op.kind == OperationKind::wipe_off)
        continue;
      if (!op.done->logged && !op.skipped()) {
        unlogged.push_back(words_.full_title(op));
        continue;
      }
      page_.paragraph(Lead::ticked(figures_.moment(op.done->time.end), 21),
                      words_.full_title(op) + how(op));
    }
    if (!unlogged.empty())
      page_.paragraph(Lead::item(),
                      fmt::format("Not in the log, but taken as done because later work "
                                  "is: {}.",
                                  fmt::join(unlogged, "; ")));
  }

  void lessons() {
    for (std::size_t c = 0; c < plan_.job.coatings.size(); ++c) {
      rate(c);
      drying(c);
      if (plan_.tins_short.at(c) > Volume())
        page_.paragraph(
            Lead::look(),
            fmt::format("The log takes {} more {} than the job and the log had at hand: "
                        "log the tin it came from.",
                        figures_.volume(plan_.tins_short[c]).text(), name(c)));
    }
    to_keep();
    for (const LogEntry& entry : plan_.job.history.entries)
      if (entry.fault) fault(entry);
    if (!plan_.job.history.torn.empty())
      page_.paragraph(Lead::look(),
                      "The last line of the log was cut off while it was written. It does "
                      "not count; log it again.");
  }

  /// What was learnt, as the next job's file takes it.
  void to_keep() {
    bool told = false;
    for (std::size_t c = 0; c < plan_.job.coatings.size(); ++c) {
      const Learnt &need = plan_.thirst.at(c), &hours = plan_.slowness.at(c);
      if (need.here + hours.here == 0) continue;
      std::vector<std::string> members;
      const auto add = [&](const char* what, const Learnt& learnt) {
        if (learnt.readings > 0)
          members.push_back(fmt::format(R"("{0}_factor": {1:.3g}, "{0}_coats": {2})", what,
                                        learnt.factor, learnt.readings));
      };
      add("need", need);
      add("drying", hours);
      if (!told)
        page_.paragraph(Lead::item(),
                        "This is used for what is still to come. For the next job with the same "
                        "coating in this room, put it into the coating there:");
      told = true;
      page_.paragraph(Lead::plain(4), fmt::format(R"({}: "earlier_jobs": {{{}}})", name(c),
                                                  fmt::join(members, ", ")));
    }
  }

  void moved() {
    const auto& last = *plan_.job.last_plan;
    page_.heading(fmt::format("What moved since the plan of {}", figures_.moment(last.now)));
    if (last.ready_at && plan_.schedule.ready_at) {
      const Minutes later = *plan_.schedule.ready_at - *last.ready_at;
      page_.paragraph(Lead::item(), fmt::format("Ready for light use: {}", shift(later)));
    }
    if (plan_.moves.empty()) page_.paragraph(Lead::item(), "No step moved.");
    for (const Move& move : plan_.moves) page_.paragraph(Lead::item(), words_for(move));
  }

 private:
  std::string name(std::size_t coating) const {
    return cut_to(longest_name, plan_.job.coatings[coating].name);
  }

  static std::string how(const Operation& op) {
    if (op.skipped()) return ", left out";
    return op.done->insisted ? ", insisted on" : "";
  }

  static std::string lines(const std::vector<int>& numbers) {
    return fmt::format("{} {}", numbers.size() == 1 ? "number" : "numbers",
                       fmt::join(numbers, ", "));
  }

  void rate(std::size_t c) {
    const Learnt& learnt = plan_.thirst.at(c);
    const Coating& coating = plan_.job.coatings[c];
    if (learnt.readings > 0)
      page_.paragraph(
          Lead::item(),
          fmt::format("{}: your rate so far: {} after {} ({} {}).", name(c),
                      figures_.spread(coating.spread.value / learnt.factor).text(),
                      count_text(learnt.readings, "coat", "coats"), word_for(coating.spread.origin),
                      figures_.spread(coating.spread.value).text()));
    if (!learnt.asked_of.empty())
      page_.paragraph(Lead::question(),
                      fmt::format("{} of the log takes far more or less {} than expected. Is that "
                                  "right? It does not count until it is logged again with "
                                  "--corrects, and --insist where it is right.",
                                  lines(learnt.asked_of), name(c)));
  }

  void drying(std::size_t c) {
    const Learnt& learnt = plan_.slowness.at(c);
    const std::string factor = factor_text(learnt.factor);
    if (learnt.readings > 0)
      page_.paragraph(Lead::item(),
                      fmt::format("{}: your coats take {} as long as estimated to dry ({} tried).",
                                  name(c), factor == "1" ? "about" : factor + " times",
                                  count_text(learnt.readings, "coat", "coats")));
    if (!learnt.asked_of.empty())
      page_.paragraph(Lead::question(),
                      fmt::format("The trial under {} of the log is far from the estimate. Is "
                                  "that right? It does not count until it is logged again with "
                                  "--corrects and --insist.",
                                  lines(learnt.asked_of)));
  }

  void fault(const LogEntry& entry) {
    for (const Operation& op : plan_.list.operations)
      if (op.key == entry.step)
        page_.paragraph(Lead::look(),
                        fmt::format("{}: {}, seen {}.", words_.full_title(op),
                                    tackfree::words_for(*entry.fault), figures_.moment(entry.at)));
  }

  static std::string shift(Minutes later) {
    if (later == Minutes(0)) return "as it was.";
    const std::string size = wait_text(to_duration(later < Minutes(0) ? -later : later));
    return fmt::format("{} {}.", size, later < Minutes(0) ? "sooner" : "later");
  }

  std::string words_for(const Move& move) const {
    if (!move.dated_step)
      return fmt::format("{}: gone; it was planned for {}.", move.title,
                         figures_.moment(*move.from));
    const DatedStep& step = plan_.schedule.steps.at(*move.dated_step);
    const Operation& op = plan_.list.operations.at(step.operation);
    const std::string title = words_.full_title(op);
    if (op.done)
      return fmt::format(
          "{}: {} {}{}.", title, op.skipped() ? "left out" : "done", figures_.moment(step.begin()),
          move.from ? fmt::format("; it was planned for {}", figures_.moment(*move.from)) : "");
    const std::string why = words_.why(step);
    const std::string because = why.empty() ? "" : " " + why;
    if (!move.from)
      return fmt::format("{}: new, {}.{}", title, figures_.moment(step.begin()), because);
    std::string by = shift(step.begin() - *move.from);
    return fmt::format("{}: {}, {}{}", title, figures_.moment(step.begin()), by, because);
  }

  Page& page_;
  const Plan& plan_;
  const StepWords& words_;
  const Figures& figures_;
};

}  // namespace

void write_progress(Page& page, const Plan& plan, const StepWords& words) {
  Progress progress(page, plan, words);
  const bool logged = !plan.job.history.entries.empty() || !plan.job.history.torn.empty();
  const auto taught = [](const Learnt& learnt) { return learnt.readings > 0; };
  if (logged) page.heading("Done so far, by your log");
  if (!logged &&
      (std::ranges::any_of(plan.thirst, taught) || std::ranges::any_of(plan.slowness, taught)))
    page.heading("Learned from earlier jobs");
  progress.done();
  progress.lessons();
  if (plan.job.last_plan) progress.moved();
}

}  // namespace tackfree
