// JSON last plan: what a later plan keeps to, and the file in which `plan` keeps it beside the job.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>

namespace tackfree {

/// What a later plan keeps to of this one: its steps, and its calendar's events.
LastPlan as_last_plan(const Plan& plan);

/// The plan and the last plan that it was compared with, under the `digest` of what it was made
/// from.
std::string kept_plan_json(const Plan& plan, const std::string& digest);

}  // namespace tackfree
