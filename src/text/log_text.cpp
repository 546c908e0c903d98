#include "tackfree/text/log_text.hpp"

#include "tackfree/text/text_page.hpp"
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

/// What happened, where `what` names the step or the coating.
std::string happened(const LogEntry& entry, const std::string& what) {
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
    case LogKind::withdrawn:
      break;
  }
  if (entry.corrects_line) return fmt::format("line {} is taken back", *entry.corrects_line);
  return fmt::format("number {} is taken back", entry.corrects.value_or(0));
}

}  // namespace

std::string understood_text(const UnderstoodReport& told, int columns) {
  const WorkWords words(told.standing.job);
  const Figures& figures = words.figures();
  const LogEntry& entry = told.entry;
  const std::string what = told.operation
                               ? words.full_title(told.standing.list.operations.at(*told.operation))
                               : entry.coating;
  std::vector<std::string> rest = details(entry, figures);
  std::string when = figures.moment(entry.at);
  if (entry.began_at)
    when = fmt::format("{} to {}", figures.moment(*entry.began_at), figures.clock(entry.at));
  rest.insert(rest.begin(), when);
  TextPage page(columns);
  page.paragraph(Lead::introduced("Understood"),
                 fmt::format("{}; {}", happened(entry, what), fmt::join(rest, "; ")));
  for (const Consequence& consequence : told.consequences)
    page.paragraph(Lead::look(0), consequence_words(consequence, told.standing));
  return page.text();
}

std::string log_text(const Job& job, int columns) {
  const Figures figures(job);
  TextPage page(columns);
  for (const LogEntry& entry : job.history.entries) {
    std::vector<std::string> rest = details(entry, figures);
    rest.insert(rest.begin(), happened(entry, entry.step.empty() ? entry.coating : entry.step));
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
  return page.text();
}

}  // namespace tackfree
