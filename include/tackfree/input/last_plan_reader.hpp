// Last plan reader: steps and calendar events of a plan that was written as JSON before.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/last_plan.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// The plan in the text of a file, of the job with that id. Nothing, with Problems under the name
/// `file`, where it is none or of another job. What a later plan does not keep to is not looked at.
std::optional<LastPlan> parse_last_plan(std::string_view text, const std::string& file,
                                        const std::string& job_id, Problems& problems);

/// What `plan` keeps beside the job.
struct KeptPlan {
  std::string digest;              ///< a fingerprint of all that the plan was made from
  LastPlan plan;                   ///< as it was printed
  std::optional<LastPlan> before;  ///< the last plan then, which it was compared with
};

/// The same of a file in which `plan` keeps what it planned.
std::optional<KeptPlan> parse_kept_plan(std::string_view text, const std::string& file,
                                        const std::string& job_id, Problems& problems);

}  // namespace tackfree
