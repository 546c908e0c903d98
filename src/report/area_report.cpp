#include "tackfree/report/area_report.hpp"

#include "tackfree/report/display_text.hpp"
#include "tackfree/report/json_areas.hpp"
#include "tackfree/report/json_text.hpp"
#include "tackfree/report/text_areas.hpp"
#include "tackfree/report/text_background.hpp"

#include <nlohmann/json.hpp>

namespace tackfree {

std::string area_text(const Plan& plan, int columns, Ink ink) {
  const Figures figures(plan.job);
  TextPage page(columns, ink);
  page.heading(cut_to(page.columns(), plan.job.name));
  page.paragraph({0, ""}, plan.job.note);
  write_areas(page, plan, figures);
  write_areas_by_side(page, plan, figures);
  write_notes(page, plan);
  return page.text();
}

std::string area_json(const Plan& plan) {
  using Json = nlohmann::ordered_json;
  constexpr int schema_version = 1;
  Json document;
  document["tackfree_area"] = schema_version;
  document["job"] = {{"id", plan.job.id}, {"name", plan.job.name}, {"note", plan.job.note}};
  put_areas(document, plan);
  Json& notes = document["notes"] = Json::array();
  for (const Note& note : plan.notes) notes.push_back({{"about", note.about}, {"text", note.text}});
  return json_text(document);
}

}  // namespace tackfree
