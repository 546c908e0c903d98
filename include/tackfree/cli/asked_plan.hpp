// Asked plan: the plan that `plan` and `buy` print, going on from the one that was kept.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/cli/asked_job.hpp"
#include "tackfree/cli/kept_plan.hpp"
#include "tackfree/plan/plan.hpp"

#include <optional>

namespace tackfree {

struct AskedPlan {
  Plan plan;
  KeptPlanFile kept;  ///< the kept plan that it went on from
};

/// Tells on the terminal what is being worked out, where that takes a while, and then which lines
/// of the log are left out and what is wrong with the kept plan. Nothing, with Problems, as for
/// make_plan.
std::optional<AskedPlan> asked_plan(const Options& options, AskedJob asked, const Streams& to,
                                    Problems& problems);

}  // namespace tackfree
