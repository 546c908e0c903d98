// Last plan reader: steps and calendar events of a plan that was written as JSON before.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/last_plan.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// The plan in `file`, of the job with that id. Nothing, with Problems, where it is none or of
/// another job. What a later plan does not keep to is not looked at.
std::optional<LastPlan> read_last_plan(const std::filesystem::path& file, const std::string& job_id,
                                       Problems& problems);

/// The same from the text of a file, named `file` in Problems.
std::optional<LastPlan> parse_last_plan(std::string_view text, const std::string& file,
                                        const std::string& job_id, Problems& problems);

}  // namespace tackfree
