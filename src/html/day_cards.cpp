#include "tackfree/html/day_cards.hpp"

#include "tackfree/document/fumes_section.hpp"
#include "tackfree/html/html_page.hpp"
#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/vapour_left_words.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): its kind, its first word and the rest
void write_note(Markup& html, std::string_view kind, std::string_view word, std::string_view text) {
  if (text.empty()) return;
  html.open("p", {{"class", std::string(kind)}});
  html.element("b", {}, word);
  html.raw(" ");
  html.isolated(text);
  html.close();
}

/// What of the day was told last: it is not said twice in a row.
struct Told {
  std::string why, vapour;
};

void write_entry(Markup& html, const Plan& plan, const StepWords& words, const HowTo& how_to,
                 const WorkEntry& entry, Told& told) {
  html.open("li");
  html.open("label");
  html.lone("input", {{"type", "checkbox"}});
  html.element("span", {{"class", fmt::format("clock clock-{}", words.figures().clock_columns())}},
               words.figures().clock(entry.time.begin));
  html.raw(" ");
  html.isolated(entry.what);
  html.close();
  html.element("span", {{"class", "length"}}, duration_text(to_duration(entry.time.length())));
  if (const FlammableTime* time = flammable_time_from(plan, entry))
    write_note(html, "off", "Off", off_text(plan, *time));
  if (entry.step != nullptr) {
    const std::string vapour = vapour_left_words(plan, *entry.step, words.figures());
    if (vapour != told.vapour) write_note(html, "vapour", "Vapour", vapour);
    told.vapour = vapour;
    if (const auto number = how_to.number_of(entry.step->operation)) {
      html.raw(" ");
      html.element("a", {{"href", "#how-to"}, {"class", "how"}}, fmt::format("how #{}", *number));
    }
    if (entry.first_piece) {
      write_note(html, "pour", "Pour", words.pour(plan.list.operations.at(entry.step->operation)));
      const std::string why = words.why(*entry.step);
      if (why != told.why) write_note(html, "why", "Why then:", why);
      if (!why.empty()) told.why = why;
    }
  }
  html.close();
}

void write_room_for_notes(Markup& html) {
  html.open("dl", {{"class", "readings"}});
  for (const std::string_view what :
       {chart_words::air_at_start, "Humidity", "Boards", chart_words::poured, "Done at", "Notes"}) {
    html.open("div");
    html.element("dt", {}, what);
    html.element("dd", {}, "");
    html.close();
  }
  html.close();
}

}  // namespace

void write_html_days(Markup& html, const Plan& plan, const StepWords& words, const HowTo& how_to) {
  for (const WorkDay& day : work_days(plan, words)) {
    html.open("div", {{"class", "work-day"}});
    html.open("h3");
    html.text(words.figures().day_of(day.on));
    html.raw(" ");
    html.element("span", {{"class", "aside"}},
                 fmt::format("{} of work{}", duration_text(to_duration(day.work)),
                             day.typical ? chart_words::typical_air : ""));
    html.close();
    write_note(html, "airing", "Airing",
               airing_advice(plan, day.airing, day.better_airing, words.figures()));
    html.open("ol", {{"class", "work"}});
    Told told;  // a reason stands once a day
    for (const WorkEntry& entry : day.entries) write_entry(html, plan, words, how_to, entry, told);
    html.close();
    write_room_for_notes(html);
    html.close();
  }
}

}  // namespace tackfree
