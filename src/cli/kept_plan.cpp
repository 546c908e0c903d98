#include "tackfree/cli/kept_plan.hpp"

#include "tackfree/base/file_identity.hpp"
#include "tackfree/base/fingerprint.hpp"
#include "tackfree/base/text_file.hpp"
#include "tackfree/export/last_plan_json.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Of the text of a file; of one that is not there, as a log may be, none.
std::string print_of(const std::filesystem::path& file) {
  Problems unread;
  const auto text = read_text_file(file, unread);
  return text ? fingerprint(*text) : "none";
}

/// A fingerprint of all that a plan follows from. Where the files lie is no part of it.
std::string digest_of(const Options& options, const Job& job, Instant now) {
  std::string all = fmt::format("tackfree {}\n{}\n", TACKFREE_VERSION, iso_utc(now));
  if (options.airing == AiringChoice::proposed) all += "proposed airing\n";
  if (options.last_plan) all += fmt::format("last plan {}\n", print_of(*options.last_plan));
  for (const FileRead& read : job.files_read)
    all += fmt::format("{} {}\n", read.what, print_of(read.path));
  return fingerprint(all);
}

bool is_read(const Job& job, const std::filesystem::path& path) {
  const auto file = identity_of(path);
  return file && std::ranges::any_of(job.files_read, [&](const FileRead& read) {
           return identity_of(read.path) == file;
         });
}

}  // namespace

std::filesystem::path kept_plan_path(const std::filesystem::path& job_file) {
  std::filesystem::path path = job_file;
  return path.replace_extension(".kept.json");
}

KeptPlanFile::KeptPlanFile(const Options& options, const Job& job, Instant now)
    : path_(kept_plan_path(options.job_file)), digest_(digest_of(options, job, now)) {
  std::error_code fault;
  Problems problems;
  if (is_read(job, path_))
    problems.push_back({.file = path_.string(), .wanted = "is a file of the job itself"});
  // A link that leads nowhere is there too, and not ours.
  else if (std::filesystem::exists(std::filesystem::symlink_status(path_, fault)))
    if (const auto text = read_text_file(path_, problems))
      kept_ = parse_kept_plan(*text, path_.string(), job.id, problems);
  if (!problems.empty())
    fault_ = clean(to_text(problems.front())) +
             "; it is left as it is, and no plan is kept until you move it away\n";
}

std::vector<LastPlan> KeptPlanFile::plans() const {
  std::vector<LastPlan> all;
  if (kept_) all.push_back(kept_->plan);
  if (kept_ && kept_->before) all.push_back(*kept_->before);
  return all;
}

std::optional<LastPlan> KeptPlanFile::last_plan() const {
  if (!kept_) return std::nullopt;
  return kept_->digest == digest_ ? kept_->before : kept_->plan;
}

std::string KeptPlanFile::replace(const Plan& plan) const {
  Problems problems;
  if (!fault_.empty() || write_text_file(path_, kept_plan_json(plan, digest_), problems)) return {};
  return fmt::format("This plan is not kept for tonight and the next plan: {}\n",
                     clean(to_text(problems.front())));
}

}  // namespace tackfree
