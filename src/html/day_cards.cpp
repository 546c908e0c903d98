#include "tackfree/html/day_cards.hpp"

#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/line_words.hpp"
#include "tackfree/words/session_lines.hpp"

#include <set>
#include <string>

namespace tackfree {

namespace {

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): its class and its text
void write_note(Markup& html, std::string_view meaning, std::string_view text) {
  html.open("p", {{"class", std::string(meaning)}});
  html.isolated(text);
  html.close();
}

/// The person's name, where it does not stand above the lines already.
std::string what_of(const WorkLine& line, const Plan& plan, bool named) {
  return line.who && !named
             ? cut_to(longest_name, plan.job.people.at(*line.who).name) + ": " + line.what
             : line.what;
}

void write_box(Markup& html, const WorkLine& line, const std::string& what,
               const Figures& figures) {
  html.open("label");
  html.lone("input", {{"type", "checkbox"}});
  html.open("span", {{"class", "line"}});
  html.open("span", {{"class", "when"}});
  html.element("b", {}, figures.clock(line.time.begin));
  html.raw(" ");
  html.element("span", {{"class", "length"}}, hours_text(line.work));
  html.close();
  html.raw(" ");
  html.open("span", {{"class", "what"}});
  html.isolated(what);
  html.close();
  html.close();
  html.close();
}

/// What the hand on the shoulder would say: why then, and how it is done.
void write_how(Markup& html, const Plan& plan, const StepWords& words, const HowTo& how_to,
               const WorkLine& line) {
  std::set<std::size_t> numbers;
  for (const DatedStep* step : line.steps)
    if (const auto number = how_to.number_of(step->operation)) numbers.insert(*number);
  const std::string why =
      line.first_piece ? why_words(line, plan, words, Reasons::all_with_origins) : "";
  if (numbers.empty() && why.empty()) return;
  html.open("details", {{"class", "how"}});
  html.element("summary", {}, numbers.empty() ? "Why" : "How");
  if (!why.empty()) write_note(html, "why", why);
  if (!numbers.empty()) html.open("ul");
  for (const std::size_t number : numbers)
    for (const std::string& text : how_to.entries().at(number - 1).lines) {
      html.open("li");
      html.isolated(text);
      html.close();
    }
  if (!numbers.empty()) html.close();
  html.close();
}

void write_room_for_readings(Markup& html) {
  html.open("dl", {{"class", "readings"}});
  for (const std::string_view what :
       {"Air", "Humidity", "Boards", "Poured", chart_words::done_at}) {
    html.open("div");
    html.element("dt", {}, what);
    html.element("dd", {}, "");
    html.close();
  }
  html.close();
}

bool is_coat(const WorkLine& line, const Plan& plan) {
  return !line.steps.empty() &&
         plan.list.operations.at(line.steps.back()->operation).kind == OperationKind::coat;
}

/// What stands below a line: what to pour, and by when it must be on.
void write_below(Markup& html, const WorkLine& line, const Plan& plan, const StepWords& words) {
  if (!line.first_piece) return;
  for (const DatedStep* step : line.steps) {
    const std::string pour = words.pour(plan.list.operations.at(step->operation));
    if (pour.empty()) continue;
    html.open("p", {{"class", "pour"}});
    html.element("b", {}, "Pour");
    html.raw(" ");
    html.isolated(pour);
    html.close();
  }
  for (const std::string& limit : put_on_by_words(line, plan, words.figures()))
    write_note(html, "by", limit);
  if (is_coat(line, plan)) write_room_for_readings(html);
}

void write_session(Markup& html, const Plan& plan, const StepWords& words, const HowTo& how_to,
                   const SessionLines& session) {
  const bool named = session.people > 1;
  html.open("div", {{"class", "session"}});
  html.open("h3");
  html.isolated(session_heading(session, words.figures()));
  html.close();
  const std::string airing =
      airing_advice(plan, session.airing, session.better_airing, words.figures());
  if (!airing.empty()) write_note(html, "airing", capitalized(airing) + ".");
  const std::vector<LineWarning> warnings = warnings_of(session, plan);
  for (std::size_t i = 0; i < session.lines.size(); ++i) {
    const WorkLine& line = session.lines[i];
    if (i == 0 || (named && session.lines[i - 1].who != line.who)) {
      if (i > 0) html.close();
      if (named && line.who) {
        html.open("h4");
        html.isolated(cut_to(longest_name, plan.job.people.at(*line.who).name));
        html.close();
      }
      html.open("ol", {{"class", "work"}});
    }
    html.open("li");
    write_box(html, line, what_of(line, plan, named), words.figures());
    write_how(html, plan, words, how_to, line);
    for (const LineWarning& each : warnings)
      if (each.line == i) write_note(html, "look", each.warning.text);
    write_below(html, line, plan, words);
    html.close();
  }
  if (!session.lines.empty()) html.close();
  html.close();
}

}  // namespace

void write_day_cards(Markup& html, const Plan& plan, const StepWords& words, const HowTo& how_to) {
  html.open("div", {{"class", "sessions"}});
  for (const SessionLines& session : session_lines(plan, words))
    write_session(html, plan, words, how_to, session);
  html.close();
}

}  // namespace tackfree
