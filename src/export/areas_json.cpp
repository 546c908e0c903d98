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

void put_areas(Json& document, const Job& job, const SurfaceTakeoff& takeoff) {
  document["area_m2"] = area_in_m2(area_where(takeoff, [](const Surface&) { return true; }));
  Json& parts = document["parts"] = Json::array();
  std::vector<Length> tape(job.parts.size());
  for (const Masking& masking : takeoff.masking) tape.at(masking.part) += masking.tape;
  for (std::size_t i = 0; i < job.parts.size(); ++i)
    parts.push_back(part_areas(job.parts[i], surfaces_of(takeoff, i), tape[i]));
}

std::string area_json(const Areas& areas) {
  constexpr int schema_version = 1;
  Json document;
  document["tackfree_area"] = schema_version;
  document["job"] = {{"id", areas.job.id}, {"name", areas.job.name}, {"note", areas.job.note}};
  put_areas(document, areas.job, areas.takeoff);
  const Figures figures(areas.job);
  Json& notes = document["notes"] = Json::array();
  for (const Note& note : areas.notes)
    notes.push_back(
        {{"about", subject_of(note)}, {"text", note_text(note, areas.job, {}, figures)}});
  return json_text(document);
}

}  // namespace tackfree
