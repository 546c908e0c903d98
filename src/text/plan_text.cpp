#include "tackfree/text/plan_text.hpp"

#include "tackfree/document/air_section.hpp"
#include "tackfree/document/area_section.hpp"
#include "tackfree/document/background_sections.hpp"
#include "tackfree/document/day_sections.hpp"
#include "tackfree/document/fumes_section.hpp"
#include "tackfree/document/left_over_section.hpp"
#include "tackfree/document/material_sections.hpp"
#include "tackfree/document/progress_section.hpp"
#include "tackfree/text/day_chart.hpp"
#include "tackfree/text/text_page.hpp"
#include "tackfree/words/step_words.hpp"
#include "tackfree/words/tins_words.hpp"

namespace tackfree {

std::string text_report(const Plan& plan, int columns, Ink ink) {
  const StepWords words(plan);
  const HowTo how_to(plan);
  const Figures& figures = words.figures();
  TextPage page(columns, ink);
  write_title(page, plan, figures);
  page.blank();
  write_first(page, plan, words);
  write_unplaced(page, plan, words);
  write_progress(page, plan, words);
  write_text_chart(page, plan, words);
  write_days(page, plan, words, how_to);
  write_milestones(page, plan, words);
  write_films(page, plan, figures);
  write_areas(page, plan.job, plan.takeoff, figures);
  write_shopping(page, plan, figures);
  write_grits(page, plan);
  write_how_to(page, plan, how_to);
  write_air(page, plan, figures);
  write_fumes(page, plan, figures);
  write_left_over(page, plan, figures);
  write_notes(page, plan.notes, plan.job, plan.list, figures);
  write_cautions(page, plan);
  write_sources(page, plan, figures);
  page.blank();
  page.paragraph(Lead::plain(), plan.job.data.texts.deference);
  return page.text();
}

std::string text_shopping_list(const Plan& plan, int columns, Ink ink) {
  TextPage page(columns, ink);
  write_shopping_list(page, plan, Figures(plan.job));
  return page.text();
}

}  // namespace tackfree
