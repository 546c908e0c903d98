#include "tackfree/html/plan_page.hpp"

#include "tackfree/document/air_section.hpp"
#include "tackfree/document/area_section.hpp"
#include "tackfree/document/background_sections.hpp"
#include "tackfree/document/day_sections.hpp"
#include "tackfree/document/dead_end_section.hpp"
#include "tackfree/document/first_screen.hpp"
#include "tackfree/document/fumes_section.hpp"
#include "tackfree/document/left_over_section.hpp"
#include "tackfree/document/material_sections.hpp"
#include "tackfree/document/progress_section.hpp"
#include "tackfree/html/air_chart.hpp"
#include "tackfree/html/day_cards.hpp"
#include "tackfree/html/days_chart.hpp"
#include "tackfree/html/fumes_chart.hpp"
#include "tackfree/html/html_page.hpp"
#include "tackfree/html/style.hpp"
#include "tackfree/html/tins_chart.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t longest_title = 60;

void write_head(Markup& html, const Plan& plan) {
  html.open("head");
  html.lone("meta", {{"charset", "utf-8"}});
  html.lone("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
  html.element("title", {}, cut_to(longest_title, plan.job.name));
  html.open("style");
  html.raw(html_style());
  html.close();
  html.close();
}

/// What paper repeats on each sheet: the job's name and the plan's date.
void write_running_head(Markup& html, const Plan& plan, const Figures& figures) {
  html.open("div", {{"class", "running"}});
  html.open("p");
  html.isolated(cut_to(longest_title, plan.job.name));
  html.text(
      fmt::format(chart_words::plan_of, figures.day_and_year(plan.now), figures.clock(plan.now)));
  html.close();
  html.close();
}

/// The name, the time of the plan, and what to know first.
void write_header(Markup& html, const Plan& plan, const StepWords& words) {
  const Figures& figures = words.figures();
  html.open("header");
  html.open("h1");
  html.isolated(plan.job.name);
  html.close();
  html.element("p", {{"class", "aside"}},
               fmt::format(chart_words::as_of, figures.day_and_year(plan.now),
                           figures.clock(plan.now), figures.zone().name()));
  html.open("div", {{"class", "first"}});
  HtmlPage page(html);
  write_first_screen(page, plan, words);
  page.end();
  html.close();
  html.close();
}

void write_contents(Markup& html) {
  html.open("nav", {{"aria-label", chart_words::on_this_page}});
  html.open("ul");
  for (const std::string_view title :
       {std::string_view(chart_words::the_days), std::string_view(chart_words::what_to_buy),
        std::string_view("Cautions")}) {
    html.open("li");
    html.element("a", {{"href", "#" + anchor_of(title)}}, title);
    html.close();
  }
  html.close();
  html.close();
}

/// What everybody needs: the sessions, and what to buy.
void write_work_and_shopping(Markup& html, HtmlPage& page, const Plan& plan, const StepWords& words,
                             const HowTo& how_to) {
  write_unplaced(page, plan, words);
  write_progress(page, plan, words);
  page.heading(chart_words::the_days);
  write_day_cards(html, plan, words, how_to);
  page.heading(chart_words::what_to_buy);
  write_tins(html, plan, words.figures());
  write_sundries(page, plan, words.figures());
}

/// What is looked up, each section behind its heading.
void write_background(Markup& html, HtmlPage& page, const Plan& plan, const StepWords& words,
                      const HowTo& how_to, Printed printed) {
  const Figures& figures = words.figures();
  page.sections(HtmlPage::Sections::unfolded);
  write_due_dates(page, plan, words);
  page.heading(chart_words::work_and_waits);
  write_days_chart(html, plan, words);
  write_milestones(page, plan, words);
  if (printed == Printed::sheets) page.sections(HtmlPage::Sections::folded);
  write_products(page, plan, figures);
  page.blank();
  write_tins_chart(html, plan, figures);
  write_areas(page, plan.job, plan.takeoff, figures);
  write_films(page, plan, figures);
  write_grits(page, plan);
  if (printed == Printed::whole)
    write_how_to(page, plan, how_to);
  else
    write_advice(page, plan);
  page.heading(chart_words::air_and_drying);
  write_air_chart(html, plan, words);
  write_air(page, plan, figures);
  write_fumes(page, plan, figures);
  page.blank();
  write_fumes_chart(html, plan, figures);
  write_left_over(page, plan, figures);
  write_notes(page, plan.notes, plan.job, plan.list, figures);
  write_cautions(page, plan);
  write_sources(page, plan, figures);
}

}  // namespace

std::string html_report(const Plan& plan, Printed printed) {
  const StepWords words(plan);
  const HowTo how_to(plan);
  Markup html;
  html.raw("<!DOCTYPE html>\n");
  html.open("html", {{"lang", "en"}});
  write_head(html, plan);
  html.open("body", {{"class", printed == Printed::whole ? "whole" : "sheets"}});
  write_running_head(html, plan, words.figures());
  html.open("div", {{"class", "page"}});
  html.raw(chart_patterns());
  write_header(html, plan, words);
  write_contents(html);
  html.open("main");
  HtmlPage page(html);
  write_work_and_shopping(html, page, plan, words, how_to);
  write_background(html, page, plan, words, how_to, printed);
  page.end();
  html.close();
  html.open("footer");
  if (!plan.job.note.empty()) html.element("p", {{"class", "aside"}}, plan.job.note);
  html.element("p", {}, plan.job.data.texts.deference);
  html.close();
  html.close();
  html.close();
  html.close();
  return html.markup();
}

}  // namespace tackfree
