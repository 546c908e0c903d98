#include "tackfree/document/log_sections.hpp"

#include "tackfree/words/consequence_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/step_words.hpp"

#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

std::string air_words(const LogEntry& entry, const Figures& figures) {
  if (!entry.temperature) return {};
  std::string text = "air " + figures.temperature(*entry.temperature).text();
  if (entry.humidity) text += ", " + humidity_text(*entry.humidity);
  return text;
}

/// What the entry says besides what and when.
std::vector<std::string> details(const LogEntry& entry, const Figures& figures) {
  std::vector<std::string> all;
  if (entry.amount) all.push_back(figures.volume_both_ways(*entry.amount));
  if (std::string air = air_words(entry, figures); !air.empty()) all.push_back(std::move(air));
  if (entry.insisted) all.emplace_back("insisted on");
  if (entry.corrects && entry.kind != LogKind::withdrawn)
    all.push_back(fmt::format("in place of number {}", *entry.corrects));
  if (!entry.note.empty()) all.push_back(fmt::format("\"{}\"", entry.note));
  return all;
}

/// The coating or the liquid that it is about.
const std::string& product_of(const LogEntry& entry) {
  return entry.thinner.empty() ? entry.coating : entry.thinner;
}

std::string bought_words(const LogEntry& entry, const Figures& figures) {
  std::vector<std::string> tins;
  for (const BoughtTins& each : entry.bought)
    tins.push_back(fmt::format("{} x {} {}", each.count,
                               each.size.empty() ? figures.volume(each.each).text() : each.size,
                               each.product));
  return fmt::format("bought: {}", fmt::join(tins, ", "));
}

/// `away Thu Apr 15, all day`, `Ann free Thu Apr 15, 8:00 to 9:30 pm`.
std::string hours_words(const LogEntry& entry, const Figures& figures) {
  std::string text = entry.kind == LogKind::away ? "away " : "free ";
  if (!entry.person.empty()) text.insert(0, entry.person + " ");
  if (!entry.hours) return text;
  const LocalTime from = figures.zone().local(entry.hours->begin);
  const LocalTime until = figures.zone().local(entry.hours->end);
  if (from.minute_of_day == 0 && until.minute_of_day == 0 && until.on == next_day(from.on))
    return text + figures.day(entry.hours->begin) + ", all day";
  if (from.on == until.on || (until.minute_of_day == 0 && until.on == next_day(from.on)))
    return text + figures.day(entry.hours->begin) + ", " + figures.clock_span(*entry.hours);
  return fmt::format("{}{} to {}", text, figures.moment(entry.hours->begin),
                     figures.moment(entry.hours->end));
}

/// What happened, where `what` names the step or the coating.
std::string happened(const LogEntry& entry, const std::string& what, const Figures& figures) {
  switch (entry.kind) {
    case LogKind::coat:
      return what + ", put on";
    case LogKind::done:
      return what + ", done";
    case LogKind::skipped:
      return what + ", left out";
    case LogKind::test:
      return fmt::format("{}: {} test {}", what,
                         dry_test_words.at(static_cast<std::size_t>(*entry.test)),
                         entry.passed ? "passed" : "failed");
    case LogKind::fault:
      return fmt::format("{}: {}", what, words_for(*entry.fault));
    case LogKind::tin:
      return fmt::format("{}: a tin {}", what,
                         tin_event_words.at(static_cast<std::size_t>(*entry.tin)));
    case LogKind::waste:
      return what + ": thrown away";
    case LogKind::air:
      return "reading";
    case LogKind::rags:
      return "oily rags dealt with";
    case LogKind::note:
      return "note";
    case LogKind::bought:
      return bought_words(entry, figures);
    case LogKind::away:
    case LogKind::free:
      return hours_words(entry, figures);
    case LogKind::withdrawn:
      break;
  }
  if (entry.corrects_line) return fmt::format("line {} is taken back", *entry.corrects_line);
  return fmt::format("number {} is taken back", entry.corrects.value_or(0));
}

}  // namespace

void write_understood(Page& page, const UnderstoodReport& told) {
  const WorkWords words(told.standing.job);
  const Figures& figures = words.figures();
  const LogEntry& entry = told.entry;
  const std::string what = told.operation
                               ? words.full_title(told.standing.list.operations.at(*told.operation))
                               : product_of(entry);
  std::vector<std::string> rest = details(entry, figures);
  std::string when = figures.moment(entry.at);
  if (entry.began_at)
    when = fmt::format("{} to {}", figures.moment(*entry.began_at), figures.clock(entry.at));
  rest.insert(rest.begin(), when);
  page.paragraph(Lead::introduced("Understood"),
                 fmt::format("{}; {}", happened(entry, what, figures), fmt::join(rest, "; ")));
  for (const Consequence& consequence : told.consequences)
    page.paragraph(Lead::look(0), consequence_words(consequence, told.standing));
}

void write_log(Page& page, const Job& job) {
  const Figures figures(job);
  for (const LogEntry& entry : job.history.entries) {
    std::vector<std::string> rest = details(entry, figures);
    rest.insert(rest.begin(),
                happened(entry, entry.step.empty() ? product_of(entry) : entry.step, figures));
    page.paragraph(Lead::labelled(fmt::format("{}  {}", pad_left(3, fmt::to_string(entry.id)),
                                              figures.moment(entry.at)),
                                  24),
                   fmt::format("{}", fmt::join(rest, "; ")));
  }
  if (job.history.entries.empty()) page.paragraph(Lead::plain(), "The log is empty.");
  if (!job.history.torn.empty())
    page.paragraph(Lead::look(0),
                   "The last line was cut off while it was written. It does not count, and "
                   "is kept in the file beside the log when the next one is written: " +
                       job.history.torn);
}

}  // namespace tackfree
