#include "tackfree/report/text.hpp"

#include "tackfree/report/step_words.hpp"
#include "tackfree/report/text_air.hpp"
#include "tackfree/report/text_areas.hpp"
#include "tackfree/report/text_background.hpp"
#include "tackfree/report/text_chart.hpp"
#include "tackfree/report/text_days.hpp"
#include "tackfree/report/text_fumes.hpp"
#include "tackfree/report/text_materials.hpp"
#include "tackfree/report/text_page.hpp"
#include "tackfree/report/text_progress.hpp"

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
  write_areas(page, plan, figures);
  write_shopping(page, plan, figures);
  write_grits(page, plan);
  write_how_to(page, plan, how_to);
  write_air(page, plan, figures);
  write_fumes(page, plan, figures);
  write_notes(page, plan);
  write_cautions(page, plan);
  write_sources(page, plan, figures);
  page.blank();
  page.paragraph({0, ""}, plan.job.data.texts.deference);
  return page.text();
}

std::string text_shopping_list(const Plan& plan, int columns, Ink ink) {
  const Figures figures(plan.job);
  TextPage page(columns, ink);
  write_title(page, plan, figures);
  page.blank();
  page.paragraph({0, "Buy  "}, all_tins_text(plan));
  if (!plan.schedule.unplaced.empty())
    page.paragraph({0, "Note "},
                   "some steps found no time; each of their coats counts here as a session of its "
                   "own. `tackfree plan` tells which, and why.");
  write_shopping(page, plan, figures);
  page.blank();
  page.paragraph({0, ""},
                 "`tackfree plan` prints the figures behind this list, each with its source.");
  page.blank();
  page.paragraph({0, ""}, plan.job.data.texts.deference);
  return page.text();
}

}  // namespace tackfree
