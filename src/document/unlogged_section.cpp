#include "tackfree/document/unlogged_section.hpp"

#include "tackfree/base/shell_word.hpp"
#include "tackfree/document/tonight_work.hpp"
#include "tackfree/evening/tonight.hpp"
#include "tackfree/words/display_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

constexpr std::size_t beside_question = answer_columns + 1;
constexpr std::size_t beside_answer = 12;

/// A time that `tackfree log --at` reads.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the time, and from when it is seen
std::string typed(const Job& job, Instant at, Instant now) {
  const Zone& zone = job.calendar.zone;
  const LocalTime local = zone.local(at);
  if (zone.instant(local) != at) return iso_utc(at);  // the clocks repeat that hour
  const bool today = local.on == zone.local(now).on;
  if (job.clock_form() == ClockForm::hours_12) {
    const std::string clock = clock_of_12_hours(local.minute_of_day);
    return today ? clock : fmt::format("{} {}", iso_date(local.on), clock);
  }
  const std::string clock = iso_clock(local.minute_of_day);
  return today ? clock : fmt::format("{}T{}", iso_date(local.on), clock);
}

class Questions {
 public:
  Questions(Page& page, const Plan& plan, const StepWords& words)
      : page_(page), plan_(plan), words_(words), figures_(words.figures()) {}

  void ask(const UnloggedWork& work) {
    page_.paragraph(
        Lead::labelled("Done?", answer_columns),
        fmt::format("planned for {} and not logged: {}.", when(work.planned.begin), title(work)));
    command(log_command_words(plan_.job, work.report, plan_.now));
    if (work.if_done) page_.paragraph(Lead::plain(beside_answer), next(*work.if_done));
    page_.paragraph(Lead::introduced("No", beside_question, 4), not_done(work));
  }

  void sum_up(const std::vector<UnloggedWork>& older) {
    constexpr std::size_t most_named = 2;
    if (older.empty()) return;
    std::vector<std::string> titles;
    for (const UnloggedWork& work : older)
      if (titles.size() < most_named) titles.push_back(title(work));
    const std::size_t rest = older.size() - titles.size();
    page_.paragraph(Lead::plain(beside_question),
                    fmt::format("Not in your log either: {}{}.", fmt::join(titles, "; "),
                                rest > 0 ? fmt::format(", and {} more", rest) : ""));
  }

 private:
  std::string title(const UnloggedWork& work) const {
    const auto& operations = plan_.list.operations;
    std::string text = words_.full_title(operations.at(work.operations.front()));
    if (work.operations.size() > 1)
      text += fmt::format(" to P{}", operations.at(work.operations.back()).grit->p);
    return text;
  }

  /// `8:35 pm` today, `yesterday at 8:35 pm`, or day and clock.
  std::string when(Instant at) const {
    const Date on = figures_.local_date(at), today = figures_.local_date(plan_.now);
    if (on == today) return figures_.clock(at);
    return fmt::format("{} at {}", next_day(on) == today ? "yesterday" : figures_.day(at),
                       figures_.clock(at));
  }

  /// `9:10 pm` today, else `tomorrow at 6:30 pm`.
  std::string to_come(Instant at) const {
    if (figures_.local_date(at) == figures_.local_date(plan_.now)) return figures_.clock(at);
    return fmt::format("{} at {}", figures_.day_seen_from(plan_.now, at), figures_.clock(at));
  }

  /// A shell goes on after a line that ends in a backslash.
  void command(const std::vector<std::string>& words) {
    std::string line = "Yes:";
    std::size_t indent = beside_question;
    for (const std::string& word : words) {
      const std::size_t taken = indent + display_width(line) + 1 + display_width(word) + 2;
      if (taken > page_.columns() && line != "Yes:") {
        page_.line(indent, line + " \\");
        indent = beside_answer;
        line = word;
      } else {
        line += (line.empty() ? "" : " ") + word;
      }
    }
    page_.line(indent, line);
  }

  std::string next(const Plan& if_done) const {
    const Tonight then = tonight(if_done);
    if (then.work.empty()) return "Then nothing is left to do.";
    const StepWords words(if_done);
    const DatedStep& step = if_done.schedule.steps.at(then.work.front());
    const std::string title = words.full_title(if_done.list.operations.at(step.operation));
    if (then.stretch.begin <= if_done.now) return fmt::format("Then do this now: {}.", title);
    return fmt::format("Then nothing to do before {}: {}.", to_come(then.stretch.begin), title);
  }

  std::string not_done(const UnloggedWork& work) const {
    if (!work.if_not) return "log nothing. It has no time in the plan; `tackfree plan` says why.";
    if (*work.if_not <= plan_.now) return "log nothing. It is what to do now.";
    return fmt::format("log nothing. It is planned for {}.", to_come(*work.if_not));
  }

  Page& page_;
  const Plan& plan_;
  const StepWords& words_;
  const Figures& figures_;
};

}  // namespace

std::vector<std::string> log_command_words(const Job& job, const Report& report, Instant now) {
  std::vector<std::string> words{
      fmt::format("tackfree log {}", report.kind == LogKind::coat ? "coat" : "done"),
      shell_word(job.file)};
  const auto add = [&](const char* option, const std::string& value) {
    if (!value.empty()) words.push_back(fmt::format("{} {}", option, shell_word(value)));
  };
  add("--batch", report.batch);
  add("--step", report.step);
  if (report.coat) add("--coat", fmt::to_string(*report.coat));
  add("--side", report.side);
  add("--at", typed(job, report.at, now));
  return words;
}

void write_questions(Page& page, const Plan& plan, const Unlogged& unlogged,
                     const StepWords& words) {
  Questions questions(page, plan, words);
  for (const UnloggedWork& work : unlogged.asked) questions.ask(work);
  questions.sum_up(unlogged.older);
}

}  // namespace tackfree
