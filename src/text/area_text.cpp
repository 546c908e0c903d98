#include "tackfree/text/area_text.hpp"

#include "tackfree/document/area_section.hpp"
#include "tackfree/document/background_sections.hpp"
#include "tackfree/words/display_text.hpp"

namespace tackfree {

std::string area_text(const Areas& areas, int columns, Ink ink) {
  const Figures figures(areas.job);
  TextPage page(columns, ink);
  page.heading(cut_to(page.columns(), areas.job.name));
  page.paragraph(Lead::plain(), areas.job.note);
  write_areas(page, areas.job, areas.takeoff, figures);
  write_areas_by_side(page, areas.job, areas.takeoff, figures);
  write_notes(page, areas.notes, areas.job, {}, figures);
  return page.text();
}

}  // namespace tackfree
