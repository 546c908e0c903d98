#include "tackfree/document/tonight_work.hpp"

#include "tackfree/words/consequence_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/how_lines.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Lines of work that are neither coats nor wiping off; more are counted only.
constexpr std::size_t most_other_lines = 5;
constexpr std::size_t beside_lead = answer_columns + 1;

/// One line of work: a step, or several that are done to one piece by one person.
struct WorkLine {
  Interval piece;                  ///< of the first
  std::vector<std::size_t> steps;  ///< indices into Schedule::steps
  Minutes work{0};
  std::optional<std::size_t> who;
  bool dusted = false;  ///< a coat right after its dusting off
};

class TonightWork {
 public:
  TonightWork(Page& page, const Plan& plan, const Tonight& tonight, const StepWords& words)
      : page_(page), plan_(plan), tonight_(tonight), words_(words) {}

  void write() {
    for (const std::size_t step : tonight_.work) add(step);
    std::size_t others = 0, hidden = 0;
    for (const WorkLine& line : lines_) {
      const bool shown = is_shown_always(line) || ++others <= most_other_lines;
      if (shown)
        write(line);
      else
        ++hidden;
    }
    if (hidden > 0)
      page_.paragraph(Lead::plain(beside_lead),
                      fmt::format("and {} more without a coat; `tackfree plan` has them all.",
                                  count_text(static_cast<double>(hidden), "job", "jobs")));
    how();
  }

 private:
  const DatedStep& step(std::size_t index) const { return plan_.schedule.steps.at(index); }
  const Operation& operation(std::size_t index) const {
    return plan_.list.operations.at(step(index).operation);
  }

  bool is_shown_always(const WorkLine& line) const {
    const OperationKind kind = operation(line.steps.back()).kind;
    return kind == OperationKind::coat || kind == OperationKind::wipe_off;
  }

  /// Of work that is split between evenings, the piece that is next.
  std::size_t next_piece(std::size_t index) const {
    const std::vector<Interval>& pieces = step(index).pieces;
    std::size_t next = 0;
    while (next + 1 < pieces.size() && pieces[next].end <= plan_.now) ++next;
    return next;
  }

  void add(std::size_t index) {
    const std::size_t next = next_piece(index);
    const Interval piece = step(index).pieces[next];
    WorkLine line{.piece = piece, .steps = {index}, .work = piece.length(), .who = {}};
    if (next < step(index).by.size()) line.who = step(index).by[next];
    const auto together =
        std::ranges::find_if(lines_, [&](const WorkLine& other) { return goes_with(line, other); });
    if (together == lines_.end()) {
      lines_.push_back(std::move(line));
      return;
    }
    together->dusted = operation(together->steps.back()).kind == OperationKind::dust_off;
    if (together->dusted) together->steps.clear();
    together->steps.push_back(index);
    together->work += line.work;
  }

  /// The next grit of the same sanding, or the coat after its dusting off.
  bool goes_with(const WorkLine& line, const WorkLine& before) const {
    const std::size_t own = step(line.steps.front()).operation;
    const std::size_t last = step(before.steps.back()).operation;
    const Operation& work = plan_.list.operations.at(own);
    const Operation& other = plan_.list.operations.at(last);
    if (line.who != before.who || work.batch != other.batch) return false;
    if (other.kind == OperationKind::dust_off) return own == last + 1 && work.right_after;
    return work.grit && work.kind == other.kind && work.kind != OperationKind::repair &&
           work.step == other.step && work.coat == other.coat;
  }

  std::string title(const WorkLine& line) const {
    std::string text = words_.full_title(operation(line.steps.front()));
    const auto& last = operation(line.steps.back()).grit;
    if (line.steps.size() > 1 && last) text += fmt::format(" to P{}", last->p);
    if (line.dusted) text += ", dusted off first";
    if (line.steps.size() == 1 && step(line.steps.front()).pieces.size() > 1)
      text += ", part of it";
    if (const auto condition = words_.condition(operation(line.steps.back())); !condition.empty())
      text += fmt::format("; {}", condition);
    return text;
  }

  void write(const WorkLine& line) {
    const Figures& figures = words_.figures();
    const std::string who =
        line.who ? cut_to(longest_name, plan_.job.people.at(*line.who).name) + ": " : "";
    page_.paragraph(
        Lead::timed(figures.clock(line.piece.begin), figures.clock_columns(), beside_lead),
        fmt::format("{}{} ({})", who, title(line), duration_text(to_duration(line.work))));
    const std::size_t index = line.steps.back();
    const std::size_t beside = beside_lead + figures.clock_columns() + 2;
    if (const std::string pour = words_.pour(operation(index)); !pour.empty())
      page_.paragraph(Lead::labelled("pour", 0, beside), pour);
    for (const CoatClock& time : tonight_.clocks)
      if (time.operation == step(index).operation) write(time, beside);
  }

  void write(const CoatClock& time, std::size_t beside) {
    const Operation& coat = plan_.list.operations.at(time.operation);
    if (!time.pot_until) return;
    const std::string until = words_.figures().clock(*time.pot_until);
    page_.paragraph(
        Lead::labelled("pot", 0, beside),
        coat.pots > 1 ? fmt::format("{} pots, mixed one after another; the first is good until {}",
                                    coat.pots, until)
                      : fmt::format("good until {}", until));
  }

  /// The first line on how to do the first thing that has one.
  void how() {
    for (const std::size_t index : tonight_.work)
      if (const auto lines = how_lines(plan_, operation(index)); !lines.empty()) {
        page_.paragraph(Lead::plain(beside_lead), lines.front());
        return;
      }
  }

  Page& page_;
  const Plan& plan_;
  const Tonight& tonight_;
  const StepWords& words_;
  std::vector<WorkLine> lines_;
};

/// Then the advice stands beside the work.
bool is_repaired_first(const Plan& plan, const Tonight& tonight, const OpenFault& open) {
  if (!tonight.today || tonight.work.empty()) return false;
  const DatedStep& step = plan.schedule.steps.at(tonight.work.front());
  const Operation& first = plan.list.operations.at(step.operation);
  const Operation& coat = plan.list.operations.at(open.coat);
  return first.kind == OperationKind::repair && first.fault == open.fault &&
         place_of(first) == place_of(coat);
}

}  // namespace

void write_tonight_work(Page& page, const Plan& plan, const Tonight& tonight,
                        const StepWords& words) {
  TonightWork(page, plan, tonight, words).write();
}

void write_running_clocks(Page& page, const Plan& plan, const Tonight& tonight,
                          const StepWords& words) {
  for (const CoatClock& clock : tonight.clocks) {
    const Operation& coat = plan.list.operations.at(clock.operation);
    if (!coat.done) continue;
    const std::string title = words.full_title(coat);
    if (clock.wipe_off)
      page.paragraph(Lead::labelled("Wipe", answer_columns),
                     fmt::format("{}: off at {}, if it is not off yet.", title,
                                 words.figures().clock(*clock.wipe_off)));
    if (clock.pot_until)
      page.paragraph(Lead::labelled("Pot", answer_columns),
                     fmt::format("{}: what is left of it is good until {}; then it hardens in the "
                                 "pot and on the tools.",
                                 title, words.figures().clock(*clock.pot_until)));
  }
}

void write_open_faults(Page& page, const Plan& plan, const Tonight& tonight,
                       const StepWords& words) {
  for (const OpenFault& open : tonight.faults) {
    if (is_repaired_first(plan, tonight, open)) continue;
    page.paragraph(Lead::labelled("Fault", answer_columns),
                   fmt::format("{}: {}. {}", words.full_title(plan.list.operations.at(open.coat)),
                               words_for(open.fault), advice_words(open.advice)));
  }
}

}  // namespace tackfree
