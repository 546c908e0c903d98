#include "tackfree/document/choices_section.hpp"

#include "tackfree/document/dead_end_section.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/figures.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string sessions_text(std::size_t sessions) {
  return count_text(static_cast<double>(sessions), "session", "sessions");
}

/// Is it sure that none is ready as soon in so few sessions?
std::string_view proved_word(const std::optional<Proof>& proof) {
  if (!proof || !proof->earliest_ready) return "no";
  return proof->fewest_sessions ? "yes" : "the date";
}

/// The day and hour by which a person plans.
Instant ready_of(const Way& way, const Figures& figures) {
  return figures.full_hour_up(*way.schedule.ready_at);
}

/// Days and hours of work only where there is room for them.
void write_table(Page& page, const Choices& choices, const Figures& figures) {
  constexpr std::size_t wide = 70;
  Table table{.head = {"ready for light use", "sessions"}};
  const bool with_work = page.columns() >= wide;
  if (with_work) table.head.insert(table.head.end(), {"days of work", "your work"});
  table.head.emplace_back("proved");
  for (const Way& way : choices.ways) {
    std::vector<std::string>& row = table.rows.emplace_back();
    row = {figures.moment(ready_of(way, figures)), std::to_string(way.schedule.sessions.size())};
    if (with_work)
      row.insert(row.end(), {std::to_string(way.work.days.size()), hours_text(way.work.in_all)});
    row.emplace_back(proved_word(way.schedule.proof));
  }
  page.table(table);
}

/// What each step down the table costs.
void write_costs(Page& page, const Choices& choices, const Figures& figures) {
  for (std::size_t i = 1; i < choices.ways.size(); ++i) {
    const Way &before = choices.ways[i - 1], &way = choices.ways[i];
    const std::size_t fewer = before.schedule.sessions.size() - way.schedule.sessions.size();
    page.paragraph(
        Lead::item(),
        fmt::format("{} instead of {}: {} fewer, ready {} later.",
                    sessions_text(way.schedule.sessions.size()), before.schedule.sessions.size(),
                    fewer,
                    wait_text(to_duration(ready_of(way, figures) - ready_of(before, figures)))));
  }
  const std::size_t fewest = choices.ways.back().schedule.sessions.size();
  if (fewest < 2) return;
  page.paragraph(Lead::item(),
                 fmt::format("Fewer than {} sessions {}", fewest,
                             choices.none_fewer ? "are not possible within these rules: proved."
                                                : "were not found; that is no proof."));
}

void write_way_to_choose(Page& page, const Choices& choices) {
  if (choices.ways.size() < 2) return;
  page.blank();
  page.paragraph(
      Lead::plain(),
      fmt::format(
          R"(The job's aim is "{}": its plan is the {} line. With "aim": "{}" it is the {}.)"
          R"( A "ready_by" beside "aim": "sessions" chooses from the lines ready by then.)",
          choices.ways.front().job.aim == Aim::ready ? "ready" : "sessions",
          choices.ways.front().job.aim == Aim::ready ? "first" : "last",
          choices.ways.front().job.aim == Aim::ready ? "sessions" : "ready",
          choices.ways.front().job.aim == Aim::ready ? "last" : "first"));
}

}  // namespace

void write_choices(Page& page, const Choices& choices) {
  const Way& first = choices.ways.front();
  const Figures figures(first.job);
  page.heading(cut_to(page.columns(), first.job.name));
  page.paragraph(Lead::plain(), first.job.note);
  page.paragraph(Lead::plain(), fmt::format("Planned from {}.", figures.moment(first.now)));
  page.heading("Sooner, or in fewer sessions");
  if (!first.schedule.ready_at) {
    page.paragraph(Lead::plain(),
                   "There is nothing to choose from: a step has no time, or a coat does not dry "
                   "within the plan. `tackfree plan` tells which.");
    write_dead_end(page, first, choices.remedies, WorkWords(first.job));
    return;
  }
  write_table(page, choices, figures);
  page.blank();
  write_costs(page, choices, figures);
  write_way_to_choose(page, choices);
  page.blank();
  page.paragraph(Lead::plain(), first.job.data.texts.deference);
}

}  // namespace tackfree
