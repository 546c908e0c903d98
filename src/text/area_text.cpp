#include "tackfree/text/area_text.hpp"

#include "tackfree/document/area_section.hpp"
#include "tackfree/document/background_sections.hpp"
#include "tackfree/words/display_text.hpp"

namespace tackfree {

std::string area_text(const Plan& plan, int columns, Ink ink) {
  const Figures figures(plan.job);
  TextPage page(columns, ink);
  page.heading(cut_to(page.columns(), plan.job.name));
  page.paragraph(Lead::plain(), plan.job.note);
  write_areas(page, plan, figures);
  write_areas_by_side(page, plan, figures);
  write_notes(page, plan, figures);
  return page.text();
}

}  // namespace tackfree
