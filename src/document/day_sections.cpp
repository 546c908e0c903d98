#include "tackfree/document/day_sections.hpp"

#include "tackfree/document/fumes_section.hpp"
#include "tackfree/plan/due_dates.hpp"
#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/line_words.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t duration_columns = 10;
constexpr std::size_t how_columns = 4;

/// Writes the sessions, each line with what belongs below it.
class SessionBlocks {
 public:
  SessionBlocks(Page& page, const Plan& plan, const StepWords& words, const HowTo& how_to,
                DayDetail detail)
      : page_(page), plan_(plan), words_(words), how_to_(how_to), detail_(detail) {}

  void write(const SessionLines& session) {
    page_.blank();
    page_.subheading(session_heading(session, words_.figures()));
    const std::string airing =
        airing_advice(plan_, session.airing, session.better_airing, words_.figures());
    if (!airing.empty()) page_.paragraph(Lead::plain(2), capitalized(airing) + ".");
    const std::vector<LineWarning> warnings = warnings_of(session, plan_);
    told_.clear();
    for (std::size_t i = 0; i < session.lines.size(); ++i) {
      const WorkLine& line = session.lines[i];
      if (line.who && (i == 0 || session.lines[i - 1].who != line.who))
        page_.subheading(cut_to(longest_name, plan_.job.people.at(*line.who).name) + ":");
      write(line);
      for (const LineWarning& each : warnings)
        if (each.line == i) page_.paragraph(Lead::look(indent()), each.warning.text);
      if (!line.steps.empty() && line.first_piece) below(line);
    }
  }

 private:
  std::size_t indent() const { return 6 + words_.figures().clock_columns(); }

  /// The numbers of its how-to texts: `#2`.
  std::string how_to(const WorkLine& line) const {
    if (detail_ == DayDetail::plain || line.steps.empty()) return "";
    const auto number = how_to_.number_of(line.steps.back()->operation);
    return number ? fmt::format("#{}", *number) : "";
  }

  void write(const WorkLine& line) {
    const Figures& figures = words_.figures();
    const std::string start =
        "[ ] " + pad_left(figures.clock_columns(), figures.clock(line.time.begin)) + "  ";
    const std::size_t beside = start.size() + duration_columns + how_columns;
    const std::size_t left = page_.columns() > beside ? page_.columns() - beside : 0;
    const std::vector<std::string> lines = wrapped(left, line.what);
    page_.line(0, start + pad_right(left, lines.empty() ? "" : lines.front()) +
                      pad_left(duration_columns, hours_text(line.work)) +
                      pad_left(how_columns, how_to(line)));
    for (std::size_t i = 1; i < lines.size(); ++i) page_.line(start.size() + 2, lines[i]);
  }

  /// What to pour, why not sooner, and how long the coat below still takes it unsanded.
  void below(const WorkLine& line) {
    for (const DatedStep* step : line.steps)
      if (const std::string pour = words_.pour(plan_.list.operations.at(step->operation));
          !pour.empty())
        page_.paragraph(Lead::labelled("Pour", 0, indent()), pour);
    const std::string why =
        why_words(line, plan_, words_,
                  detail_ == DayDetail::plain ? Reasons::binding : Reasons::all_with_origins);
    if (why != told_) page_.paragraph(Lead::plain(indent()), why);
    if (!why.empty()) told_ = why;
    for (const std::string& limit : put_on_by_words(line, plan_, words_.figures()))
      page_.paragraph(Lead::plain(indent()), limit);
  }

  Page& page_;
  const Plan& plan_;
  const StepWords& words_;
  const HowTo& how_to_;
  DayDetail detail_;
  std::string told_;  ///< the last reason of the session
};

/// Hours of the person's own, together and by kind; the sums of sessions stand there.
void write_work(Page& page, const Plan& plan) {
  const AttendedWork& work = plan.work;
  if (work.kinds.empty()) return;
  std::vector<std::string> kinds;
  for (const WorkOfKind& each : work.kinds)
    kinds.push_back(fmt::format("{} {}", words_for(each.kind), hours_text(each.work)));
  page.paragraph(Lead::plain(),
                 fmt::format("Your own work: {} on {} ({}){}.", hours_text(work.in_all),
                             count_text(static_cast<double>(work.days.size()), "day", "days"),
                             fmt::join(kinds, ", "),
                             work.without_time > Duration()
                                 ? fmt::format(", and {} that found no time",
                                               hours_text(whole_minutes_up(work.without_time)))
                                 : ""));
}

}  // namespace

void write_title(Page& page, const Plan& plan, const Figures& figures) {
  page.heading(cut_to(page.columns(), plan.job.name));
  page.paragraph(Lead::plain(), plan.job.note);
  write_as_of(page, plan, figures);
}

void write_as_of(Page& page, const Plan& plan, const Figures& figures) {
  page.paragraph(Lead::plain(),
                 fmt::format("As of {}, {}; local times, {}", figures.day_and_year(plan.now),
                             figures.clock(plan.now), figures.zone().name()));
}

void write_days(Page& page, const Plan& plan, const StepWords& words, const HowTo& how_to,
                DayDetail detail) {
  const std::vector<SessionLines> sessions = session_lines(plan, words);
  if (sessions.empty()) return;
  page.heading("The days");
  write_work(page, plan);
  SessionBlocks blocks(page, plan, words, how_to, detail);
  for (const SessionLines& session : sessions) blocks.write(session);
}

void write_due_dates(Page& page, const Plan& plan, const StepWords& words) {
  const Figures& figures = words.figures();
  const std::vector<DueDate> dates = due_dates(plan);
  if (!dates.empty()) page.heading("Due dates");
  for (const DueDate& date : dates) {
    const std::string name = cut_to(longest_name, plan.job.batches.at(date.batch).name);
    const bool whole_day = figures.zone().local(date.due).minute_of_day == 0;
    const std::string due =
        whole_day ? figures.day(date.due - Minutes(1)) : figures.moment(date.due);
    std::string text;
    if (date.ready)
      text = fmt::format("{}, due {}: ready {}", name, due,
                         figures.moment(figures.full_hour_up(*date.ready)));
    if (date.ready && date.done && *date.done > *date.ready)
      text += fmt::format(", the last work on it done {}", figures.moment(*date.done));
    if (date.in_time())
      text += ", in time";
    else if (date.finished())
      text += fmt::format(", late by {}", wait_text(to_duration(date.late_by())));
    else if (date.ready)
      text += ", but some work on it has no time";
    else
      text = fmt::format("{}, due {}: not ready within the plan", name, due);
    if (date.longest_wait) {
      const DatedStep& step = plan.schedule.steps.at(*date.longest_wait);
      const std::string why = words.why(step);
      text += fmt::format(". The longest wait is before \"{}\", {}",
                          words.title(plan.list.operations.at(step.operation)),
                          figures.moment(step.begin()));
      if (!why.empty()) text += ". " + why.substr(0, why.size() - 1);
    }
    page.paragraph(Lead::item(), text + ".");
  }
}

void write_milestones(Page& page, const Plan& plan, const StepWords& words) {
  constexpr std::array stages{Stage::handle, Stage::light_use, Stage::hardware, Stage::stack,
                              Stage::full_cure};
  if (plan.schedule.outcomes.empty()) return;
  Table table{.head = {"batch", "handle", "light use", "hardware", "stacking", "full cure"}};
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch) {
    std::vector<std::string> row{plan.job.batches[batch].name};
    for (const Stage stage : stages) {
      const auto& outcomes = plan.schedule.outcomes;
      const auto found = std::find_if(outcomes.begin(), outcomes.end(), [&](const DatedOutcome& o) {
        return o.batch == batch && o.stage == stage;
      });
      row.push_back(found == outcomes.end() ? "-"
                    : found->at             ? words.figures().day(*found->at)
                                            : "later");
    }
    table.rows.push_back(std::move(row));
  }
  page.heading("When you can use it");
  page.table(table);
  page.paragraph(
      Lead::plain(2),
      fmt::format("Handle: move it with dry hands. Light use: nothing wet, hot or heavy. "
                  "Stacking: with paper between. Full cure: wash it and leave things "
                  "standing on it. Later: after {}, where this plan ends.",
                  words.figures().day(plan.schedule.span.end)));
}

}  // namespace tackfree
