// JSON drying: waits as factors that multiply out, and the outlook of a coat at one hour.
#pragma once

#include "tackfree/plan/coat_outlook.hpp"

#include <string>

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// One wait: label hours, factors with their origins, begin and end.
nlohmann::ordered_json explanation_json(const DryingExplanation& why, const Zone& zone);

/// The whole outlook as a JSON text.
std::string outlook_json(const Job& job, const CoatOutlook& outlook);

}  // namespace tackfree
