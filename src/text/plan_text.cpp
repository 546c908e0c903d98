#include "tackfree/text/plan_text.hpp"

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
#include "tackfree/text/day_chart.hpp"
#include "tackfree/words/display_text.hpp"

namespace tackfree {

namespace {

/// The plan on one page, part by part.
class PlanText {
 public:
  PlanText(const Plan& plan, int columns, Ink ink)
      : plan_(plan), words_(plan), how_to_(plan), page_(columns, ink) {}

  void title() {
    page_.heading(cut_to(page_.columns(), plan_.job.name));
    write_as_of(page_, plan_, words_.figures());
    page_.blank();
  }

  void full_title() {
    write_title(page_, plan_, words_.figures());
    page_.blank();
  }

  void first_screen() { write_first_screen(page_, plan_, words_); }

  void rest() { write_rest(page_); }

  void part(PlanPart part, DayDetail detail) {
    const Figures& figures = words_.figures();
    switch (part) {
      case PlanPart::warnings:
        needs_a_look();
        write_notes(page_, plan_.notes, plan_.job, plan_.list, figures);
        return write_cautions(page_, plan_);
      case PlanPart::progress:
        return write_progress(page_, plan_, words_);
      case PlanPart::day_by_day:
        write_days(page_, plan_, words_, how_to_, detail);
        write_text_chart(page_, plan_, words_);
        return write_milestones(page_, plan_, words_);
      case PlanPart::buy:
        write_shopping(page_, plan_, figures);
        return write_left_over(page_, plan_, figures);
      case PlanPart::areas:
        return write_areas(page_, plan_.job, plan_.takeoff, figures);
      case PlanPart::coats:
        write_films(page_, plan_, figures);
        write_grits(page_, plan_);
        return write_how_to(page_, plan_, how_to_);
      case PlanPart::air:
        return write_air(page_, plan_, figures);
      case PlanPart::vapour:
        return write_fumes(page_, plan_, figures);
      case PlanPart::sources:
        return write_sources(page_, plan_, figures);
    }
  }

  void part_alone(PlanPart asked) {
    const std::size_t before = page_.text().size();
    part(asked, DayDetail::plain);
    if (page_.text().size() == before) write_nothing(page_);
  }

  void needs_a_look() {
    write_unplaced(page_, plan_, words_);
    write_due_dates(page_, plan_, words_);
  }

  void background() {
    write_notes(page_, plan_.notes, plan_.job, plan_.list, words_.figures());
    write_cautions(page_, plan_);
    part(PlanPart::sources, DayDetail::full);
  }

  std::string with_deference() {
    page_.blank();
    page_.paragraph(Lead::plain(), plan_.job.data.texts.deference);
    return page_.text();
  }

 private:
  const Plan& plan_;
  StepWords words_;
  HowTo how_to_;
  TextPage page_;
};

}  // namespace

std::string first_screen_text(const Plan& plan, int columns, Ink ink) {
  PlanText text(plan, columns, ink);
  text.title();
  text.first_screen();
  text.rest();
  return text.with_deference();
}

std::string part_text(const Plan& plan, PlanPart part, int columns, Ink ink) {
  PlanText text(plan, columns, ink);
  text.title();
  text.part_alone(part);
  return text.with_deference();
}

std::string text_report(const Plan& plan, int columns, Ink ink) {
  PlanText text(plan, columns, ink);
  text.full_title();
  text.first_screen();
  text.needs_a_look();
  for (const PlanPart part : {PlanPart::progress, PlanPart::day_by_day, PlanPart::buy,
                              PlanPart::areas, PlanPart::coats, PlanPart::air, PlanPart::vapour})
    text.part(part, DayDetail::full);
  text.background();
  return text.with_deference();
}

std::string text_shopping_list(const Plan& plan, int columns, Ink ink) {
  TextPage page(columns, ink);
  write_shopping_list(page, plan, Figures(plan.job));
  return page.text();
}

}  // namespace tackfree
