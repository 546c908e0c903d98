// JSON areas: parts with their surfaces by side and grain, as part of the plan and alone.
#pragma once

#include "tackfree/plan/areas.hpp"

#include <string>

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Adds `area_m2` and `parts`.
void put_areas(nlohmann::ordered_json& document, const Job& job, const SurfaceTakeoff& takeoff);

/// The areas alone as docs/area.schema.json describes them: version key `tackfree_area`, indented
/// by two, with a final newline.
std::string area_json(const Areas& areas);

}  // namespace tackfree
