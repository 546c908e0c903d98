#include "tackfree/document/day_sections.hpp"

#include "tackfree/document/fumes_section.hpp"
#include "tackfree/plan/due_dates.hpp"
#include "tackfree/plan/recoat_slack.hpp"
#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/remedy_words.hpp"
#include "tackfree/words/tins_words.hpp"
#include "tackfree/words/unplaced_words.hpp"
#include "tackfree/words/work_days.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t duration_columns = 10;
constexpr std::size_t how_columns = 4;

/// Writes one line and what belongs below it; `told` is the last reason of the day.
void write_entry(Page& page, const Plan& plan, const StepWords& words, const HowTo& how_to,
                 const WorkEntry& entry, const std::vector<RecoatSlack>& slacks,
                 std::string& told) {
  const Figures& figures = words.figures();
  const std::string start =
      "[ ] " + pad_left(figures.clock_columns(), figures.clock(entry.time.begin)) + "  ";
  const std::size_t beside = start.size() + duration_columns + how_columns;
  const std::size_t left = page.columns() > beside ? page.columns() - beside : 0;
  const auto number = entry.step ? how_to.number_of(entry.step->operation) : std::nullopt;
  const std::vector<std::string> lines = wrapped(left, entry.what);
  page.line(0, start + pad_right(left, lines.empty() ? "" : lines.front()) +
                   pad_left(duration_columns, duration_text(to_duration(entry.time.length()))) +
                   pad_left(how_columns, number ? fmt::format("#{}", *number) : ""));
  for (std::size_t i = 1; i < lines.size(); ++i) page.line(start.size() + 2, lines[i]);
  if (entry.step == nullptr || !entry.first_piece) return;
  const Operation& op = plan.list.operations.at(entry.step->operation);
  const std::size_t indent = start.size();
  if (opens_flammable_tin(plan, *entry.step))
    page.paragraph(Lead::labelled("off", 0, indent), off_text(plan));
  page.paragraph(Lead::labelled("pour", 0, indent), words.pour(op));
  const std::string why = words.why(*entry.step);
  page.paragraph(Lead::labelled("why", 0, indent), !why.empty() && why == told ? "as above" : why);
  if (!why.empty()) told = why;
  for (const RecoatSlack& slack : slacks)
    if (&plan.schedule.steps.at(slack.dated_step) == entry.step)
      page.paragraph(Lead::labelled("room", 0, indent),
                     fmt::format("the coat below takes it unsanded until {}: {} to spare",
                                 words.figures().moment(slack.until),
                                 wait_text(to_duration(slack.until - entry.step->begin()))));
}

void write_day_head(Page& page, const Figures& figures, const WorkDay& day) {
  page.blank();
  page.subheading(fmt::format("{}: {} of work{}", figures.day_of(day.on),
                              duration_text(to_duration(day.work)),
                              day.typical ? "; typical air, hours may move" : ""));
}

/// From the set-up of its session on, where that is the work right before it.
Interval with_set_up(const Plan& plan, const DatedStep& step, const Interval& piece) {
  const auto& operations = plan.list.operations;
  std::size_t coat = step.operation;
  if (operations[coat].kind == OperationKind::dust_off && coat + 1 < operations.size()) ++coat;
  const auto& steps = plan.schedule.steps;
  const auto dated = std::ranges::find(steps, coat, &DatedStep::operation);
  if (dated == steps.end() || !dated->session) return piece;
  const Interval& set_up = plan.schedule.sessions.at(*dated->session).set_up;
  return {set_up.end == piece.begin ? set_up.begin : piece.begin, piece.end};
}

void write_next(Page& page, const Plan& plan, const StepWords& words) {
  const auto& steps = plan.schedule.steps;
  const auto next = std::find_if(steps.begin(), steps.end(), [&](const DatedStep& step) {
    return !step.pieces.empty() && step.end() > plan.now;
  });
  if (next == steps.end()) {
    page.paragraph(Lead::labelled("Next", first_columns),
                   plan.schedule.unplaced.empty()
                       ? "nothing is left to do."
                       : "nothing is left to do that has a time: see below what is in "
                         "the way.");
    return;
  }
  const auto piece = std::find_if(next->pieces.begin(), next->pieces.end(),
                                  [&](const Interval& i) { return i.end > plan.now; });
  const Interval time = with_set_up(plan, *next, *piece);
  const Operation& op = plan.list.operations.at(next->operation);
  page.paragraph(
      Lead::labelled("Next", first_columns),
      fmt::format("{}, {}: {}{} ({})", words.figures().day_seen_from(plan.now, time.begin),
                  words.figures().clock(time.begin),
                  time.begin < piece->begin ? "set up, then " : "", words.full_title(op),
                  duration_text(to_duration(time.length()))));
}

/// When the last batch is cured; nothing when one is not within the plan.
std::optional<Instant> cured_at(const Schedule& schedule) {
  std::optional<Instant> last;
  for (const DatedOutcome& outcome : schedule.outcomes) {
    if (outcome.stage != Stage::full_cure) continue;
    if (!outcome.at) return std::nullopt;
    last = std::max(last, outcome.at);
  }
  return last;
}

/// In the words of the aim that the schedule was made for.
std::string proof_text(const Proof& proof, Instant ready, Aim aim, const Figures& figures) {
  const std::string before = fmt::format(
      "is ready before {}; this one at most {} later", figures.moment(proof.ready_no_sooner_than),
      wait_text(to_duration(ready - proof.ready_no_sooner_than)));
  if (aim == Aim::ready)
    return !proof.earliest_ready
               ? before
               : fmt::format("is ready sooner{}",
                             proof.fewest_sessions ? ", or as soon in fewer sessions" : "");
  const std::string sooner = proof.earliest_ready ? "is ready sooner" : before;
  return proof.fewest_sessions ? fmt::format("has fewer sessions; none in as few {}", sooner)
                               : fmt::format("in as few sessions {}", sooner);
}

/// What the proof takes the room's air for, where that is not the air of a closed room.
std::string_view proved_air(const Plan& plan) {
  if (!plan.aired) return "";
  return plan.aired->every_chance ? " while the room is open whenever you could be coating"
                                  : " while the room is aired as here";
}

void write_proof(Page& page, const Plan& plan, const Figures& figures) {
  if (plan.schedule.proof)
    page.paragraph(Lead::labelled("Proved", first_columns),
                   fmt::format("no schedule within these rules {}{}.",
                               proof_text(*plan.schedule.proof, *plan.schedule.ready_at,
                                          plan.job.aim, figures),
                               proved_air(plan)));
}

/// When the last hardware is on; nothing where that is by the time of light use or there is none.
std::optional<Instant> hardware_on_later(const Plan& plan) {
  std::optional<Instant> last = plan.schedule.ready_at;
  for (const DatedStep& step : plan.schedule.steps)
    if (plan.list.operations.at(step.operation).kind == OperationKind::fit_hardware)
      last = std::max(last, std::optional(step.end()));
  return last == plan.schedule.ready_at ? std::nullopt : last;
}

/// Of a plan that is ready already.
std::string cured_words(const Plan& plan, const std::optional<Instant>& cured,
                        const Figures& figures) {
  if (!cured) return "; fully cured after " + figures.day(plan.schedule.span.end);
  return fmt::format("; fully cured {}{}", *cured <= plan.now ? "since " : "", figures.day(*cured));
}

void write_ready(Page& page, const Plan& plan, const Figures& figures) {
  if (!plan.schedule.ready_at) {
    page.paragraph(Lead::labelled("Ready", first_columns),
                   "no date yet: see below what found no time or does not dry.");
    return;
  }
  const auto cured = cured_at(plan.schedule);
  const auto hardware = hardware_on_later(plan);
  if (*plan.schedule.ready_at <= plan.now) {
    page.paragraph(
        Lead::labelled("Ready", first_columns),
        fmt::format("since {}, for light use{}{}", figures.moment(*plan.schedule.ready_at),
                    hardware ? "; hardware on " + figures.moment(*hardware) : "",
                    cured_words(plan, cured, figures)));
    return;
  }
  page.paragraph(
      Lead::labelled("Ready", first_columns),
      fmt::format("{}, for light use; {}fully cured {}",
                  figures.moment(figures.full_hour_up(*plan.schedule.ready_at)),
                  hardware ? fmt::format("hardware on {}; ", figures.moment(*hardware)) : "",
                  cured ? figures.day(*cured) : "after " + figures.day(plan.schedule.span.end)));
  write_proof(page, plan, figures);
}

/// What is due, and how late what cannot be in time.
void write_due(Page& page, const Plan& plan, const StepWords& words) {
  const Figures& figures = words.figures();
  for (const DueDate& date : due_dates(plan)) {
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
      text += fmt::format("; the longest wait is before \"{}\", {}{}",
                          words.title(plan.list.operations.at(step.operation)),
                          figures.moment(step.begin()), why.empty() ? "" : ": " + why);
    }
    page.paragraph(Lead::labelled("Due", first_columns), text + ".");
  }
}

/// What decides the date: of the waits of a day and more on the way to it the three longest.
void write_deciding(Page& page, const Plan& plan, const StepWords& words) {
  const auto last = last_batch(plan);
  if (!last) return;
  std::vector<std::string> texts;
  for (const DecidingWait& wait : deciding_waits(plan, *last)) {
    if (texts.size() == 3 || wait.length < one_day) break;
    const DatedStep& step = plan.schedule.steps.at(wait.dated_step);
    texts.push_back(fmt::format("{} until {}, {}", wait_text(to_duration(wait.length)),
                                words.full_title(plan.list.operations.at(step.operation)),
                                words.figures().day(step.begin())));
  }
  if (!texts.empty())
    page.paragraph(
        Lead::labelled("Waits", first_columns),
        fmt::format("{}. The longest of those that decide this date.", fmt::join(texts, "; ")));
}

/// Hours of the person's own, in all and by kind; the days' sums stand at the days.
void write_work(Page& page, const Plan& plan) {
  const AttendedWork& work = plan.work;
  if (work.kinds.empty()) return;
  std::vector<std::string> kinds;
  for (const WorkOfKind& each : work.kinds)
    kinds.push_back(fmt::format("{} {}", words_for(each.kind), hours_text(each.work)));
  page.paragraph(Lead::labelled("Work", first_columns),
                 fmt::format("{} in all, on {}: {}{}", hours_text(work.in_all),
                             count_text(static_cast<double>(work.days.size()), "day", "days"),
                             fmt::join(kinds, ", "),
                             work.without_time > Duration()
                                 ? fmt::format("; {} more that found no time",
                                               hours_text(whole_minutes_up(work.without_time)))
                                 : ""));
}

void write_remedies(Page& page, const Plan& plan, const StepWords& words) {
  if (plan.remedies.empty()) return;
  page.blank();
  page.paragraph(Lead::plain(2), plan.remedies.size() == 1
                                     ? "What would help, and what to write into the job:"
                                     : "What would help, each by itself, and what to write into "
                                       "the job:");
  for (const Remedy& remedy : plan.remedies)
    page.paragraph(Lead::item(), fmt::format("{} {}", remedy_words(remedy, plan, words),
                                             remedy_key(remedy, plan)));
  if (const std::string warming = warming_words(plan); !warming.empty())
    page.paragraph(Lead::look(), warming);
}

}  // namespace

void write_title(Page& page, const Plan& plan, const Figures& figures) {
  page.heading(cut_to(page.columns(), plan.job.name));
  page.paragraph(Lead::plain(), plan.job.note);
  page.line(0, fmt::format("As of {}, {}; local times, {}", figures.day_and_year(plan.now),
                           figures.clock(plan.now), figures.zone().name()));
}

void write_first(Page& page, const Plan& plan, const StepWords& words) {
  write_stop(page, plan);
  write_next(page, plan, words);
  write_ready(page, plan, words.figures());
  write_due(page, plan, words);
  write_deciding(page, plan, words);
  page.paragraph(Lead::labelled("Buy", first_columns), all_tins_text(plan));
  write_work(page, plan);
}

void write_unplaced(Page& page, const Plan& plan, const StepWords& words) {
  if (plan.schedule.unplaced.empty()) return;
  page.heading("No time found");
  std::vector<std::string> waiting;
  for (const Unplaced& unplaced : plan.schedule.unplaced) {
    const std::string title = words.full_title(plan.list.operations.at(unplaced.operation));
    if (unplaced.by == HeldBy::previous_step)
      waiting.push_back(title);
    else
      page.paragraph(
          Lead::look(),
          fmt::format(
              "{}: {}{}", title, unplaced_words(unplaced, plan),
              unplaced.conflict.empty()
                  ? ""
                  : fmt::format(". Not possible together: {}",
                                fmt::join(conflict_words(unplaced, plan, words.figures()), "; "))));
  }
  if (!waiting.empty())
    page.paragraph(Lead::look(), fmt::format("Waiting for that: {}.", fmt::join(waiting, "; ")));
  write_remedies(page, plan, words);
  page.paragraph(Lead::plain(2), "All else is planned below as far as it goes.");
}

void write_days(Page& page, const Plan& plan, const StepWords& words, const HowTo& how_to) {
  const std::vector<WorkDay> work = work_days(plan, words);
  if (work.empty()) return;
  const auto slacks = recoat_slacks(plan);
  page.heading("Day by day");
  page.paragraph(Lead::plain(),
                 "Minutes at the right are your own work; # is the number under HOW TO.");
  for (const WorkDay& day : work) {
    std::string told;
    write_day_head(page, words.figures(), day);
    if (const std::string airing =
            airing_advice(plan, day.airing, day.better_airing, words.figures());
        !airing.empty())
      page.paragraph(Lead::labelled("Airing"), airing);
    for (const WorkEntry& entry : day.entries)
      write_entry(page, plan, words, how_to, entry, slacks, told);
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
  page.heading("What it will bear, and when");
  page.table(table);
  page.paragraph(
      Lead::plain(2),
      fmt::format("Handle: move it with dry hands. Light use: nothing wet, hot or heavy. "
                  "Stacking: with paper between. Full cure: wash it and leave things "
                  "standing on it. Later: after {}, where this plan ends.",
                  words.figures().day(plan.schedule.span.end)));
}

}  // namespace tackfree
