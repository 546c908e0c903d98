// JSON schedule: steps, sessions, milestones and what found no time, as members of the JSON plan.
#pragma once

#include "tackfree/plan/plan.hpp"

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

/// Adds `steps`, `sessions`, `milestones` and `unplaced` to the plan.
void put_schedule(nlohmann::ordered_json& document, const Plan& plan);

/// Adds `proof`: what is proved of the schedule, or null.
void put_proof(nlohmann::ordered_json& object, const Schedule& schedule, const Zone& zone);

/// Adds `calendar`: the revision of each calendar event, for `--last-plan`.
void put_calendar(nlohmann::ordered_json& document, const Plan& plan);

/// Adds `work` to the plan: the person's hours, in all, by kind and by local day.
void put_work(nlohmann::ordered_json& document, const Plan& plan);

}  // namespace tackfree
