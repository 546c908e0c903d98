// What if: a job with a change in it, planned.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/plan/remedy.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>

namespace tackfree {

/// `job` as if its person had written the change into it, besides what is there.
Job with_change(Job job, const Change& change);

/// What comes of a change.
struct WhatIf {
  std::optional<Instant> ready_at;                     ///< nothing: something lacks a time
  std::map<std::string, Instant, std::less<>> begins;  ///< of the steps with a time, by key
};

/// The plan of `job` with `change` as of `now`; nothing where no plan can be made. What the
/// searches do is taken off `effort`: with little of it the plan may be ready later than it need
/// be.
std::optional<WhatIf> what_if(const Job& job, const Change& change, Instant now,
                              solver::Effort& effort);

}  // namespace tackfree
