#include "tackfree/export/areas_json.hpp"

#include "tackfree/export/json_text.hpp"
#include "tackfree/words/figures.hpp"
#include "tackfree/words/note_words.hpp"

#include <array>
#include <string_view>

#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<std::string_view, all_faces.size()> face_words{
    "top", "bottom", "front", "back", "left", "right", "side", "inside"};
constexpr std::array<std::string_view, 3> material_words{"solid_wood", "plywood", "fibreboard"};

double area_in_m2(Area a) { return rounded(a.in(square_metres), 4); }

Json part_areas(const Part& part, std::span<const Surface> surfaces, Length tape) {
  Json object;
  object["name"] = part.name;
  object["quantity"] = part.quantity;
  object["batch"] = part.batch;
  object["material"] = material_words.at(static_cast<std::size_t>(part.material));
  object["estimated"] = std::holds_alternative<EstimatedFrame>(part.shape);
  Area sum;
  for (const Surface& s : surfaces) sum += s.area;
  object["area_m2"] = area_in_m2(sum);
  object["tape_m"] = rounded(tape.in(metres), 3);
  Json& array = object["surfaces"] = Json::array();
  for (const Surface& s : surfaces) {
    Json surface;
    surface["face"] = face_words.at(static_cast<std::size_t>(s.face));
    surface["side"] = word_for(s.side);
    surface["grain"] = grain_keys.at(static_cast<std::size_t>(s.grain));
    surface["area_m2"] = area_in_m2(s.area);
    array.push_back(std::move(surface));
  }
  return object;
}

}  // namespace

void put_areas(Json& document, const Plan& plan) {
  document["area_m2"] = area_in_m2(area_where(plan.takeoff, [](const Surface&) { return true; }));
  Json& parts = document["parts"] = Json::array();
  std::vector<Length> tape(plan.job.parts.size());
  for (const Masking& masking : plan.takeoff.masking) tape.at(masking.part) += masking.tape;
  for (std::size_t i = 0; i < plan.job.parts.size(); ++i)
    parts.push_back(part_areas(plan.job.parts[i], surfaces_of(plan.takeoff, i), tape[i]));
}

std::string area_json(const Plan& plan) {
  using Json = nlohmann::ordered_json;
  constexpr int schema_version = 1;
  Json document;
  document["tackfree_area"] = schema_version;
  document["job"] = {{"id", plan.job.id}, {"name", plan.job.name}, {"note", plan.job.note}};
  put_areas(document, plan);
  const Figures figures(plan.job);
  Json& notes = document["notes"] = Json::array();
  for (const Note& note : plan.notes)
    notes.push_back({{"about", subject_of(note)}, {"text", note_text(note, plan, figures)}});
  return json_text(document);
}

}  // namespace tackfree
