// JSON schedule: steps, sessions, milestones and what found no time, as members of the JSON plan.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string_view>

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Adds `steps`, `sessions`, `milestones`, `unplaced` and `remedies` to the plan.
void put_schedule(nlohmann::ordered_json& document, const Plan& plan);

/// Adds `proof`: what is proved of the schedule, or null.
void put_proof(nlohmann::ordered_json& object, const Schedule& schedule, const Zone& zone);

/// Adds `calendar`: the revision of each calendar event, for `--last-plan`.
void put_calendar(nlohmann::ordered_json& document, const Plan& plan);

/// Adds `work` to the plan: the person's hours, in all, by kind and by local day.
void put_work(nlohmann::ordered_json& document, const Plan& plan);

}  // namespace tackfree
