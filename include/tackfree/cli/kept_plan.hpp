// Kept plan: what `plan` planned, kept beside the job for `tonight` and the next plan.
#pragma once

#include "tackfree/cli/options.hpp"
#include "tackfree/input/last_plan_reader.hpp"
#include "tackfree/plan/plan.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// `bench.kept.json` beside `bench.json`.
std::filesystem::path kept_plan_path(const std::filesystem::path& job_file);

/// The kept plan as one run finds it and leaves it.
class KeptPlanFile {
 public:
  KeptPlanFile(const Options& options, const Job& job, Instant now);

  /// The plan that was kept last, and the one before it.
  std::vector<LastPlan> plans() const;
  /// The plan that this one is compared with: the kept one; of the very run that made the kept one,
  /// that before it, so that a command that is given twice prints the same bytes.
  std::optional<LastPlan> last_plan() const;

  /// A line on a file that cannot be read, is of another job or is not ours; else empty. Such a
  /// file is never replaced.
  const std::string& fault() const { return fault_; }
  /// Keeps the plan. A line where it cannot be written; else empty.
  std::string replace(const Plan& plan) const;

 private:
  std::filesystem::path path_;
  std::string digest_;
  std::optional<KeptPlan> kept_;
  std::string fault_;
};

}  // namespace tackfree
