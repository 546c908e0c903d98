// JSON values: instants, gates and stages as every JSON document writes them.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <optional>
#include <string_view>

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Adds `NAME_at` in UTC and `NAME_local` with its offset to an object, or nulls.
void put_instant(nlohmann::ordered_json& object, std::string_view name,
                 const std::optional<Instant>& at, const Zone& zone);

/// The keys of gates and stages: `too_cold`, `light_use`.
std::string_view key_for(Gate gate);
std::string_view key_for(Stage stage);

/// Adds the `gate` of a coating, its `rule` in words, and the `origin` and `source` of its figure.
void put_gate(nlohmann::ordered_json& object, const Job& job, const Coating& coating, Gate gate);

}  // namespace tackfree
