#include "tackfree/cli/asked_job.hpp"

#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/base/name.hpp"
#include "tackfree/cli/given_time.hpp"
#include "tackfree/cli/output_files.hpp"
#include "tackfree/input/job_reader.hpp"
#include "tackfree/input/last_plan_reader.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <chrono>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

std::optional<Instant> planning_time(const Options& options, const Job& job, Problems& problems) {
  if (options.now) return time_given("--now", *options.now, job, problems);
  if (job.now_at) return job.now_at;
  return std::chrono::floor<Minutes>(std::chrono::system_clock::now());
}

void check_coating(const std::string& asked, const Job& job, Problems& problems) {
  std::vector<std::string> names;
  for (const Coating& coating : job.coatings) names.push_back(coating.name);
  if (std::ranges::find(names, asked) != names.end()) return;
  problems.push_back(
      {.key = "--coating",
       .found = asked,
       .wanted = fmt::format("wanted a coating of the job: {}", fmt::join(names, ", ")),
       .hint = name_hint(asked, names)});
}

}  // namespace

LockPatience telling(std::ostream& err) {
  return {.told = [&err](const std::filesystem::path& file) {
    err << clean(fmt::format("{}: another program keeps it locked; waiting for up to ten seconds",
                             file.string()))
        << std::endl;  // before the wait
  }};
}

std::optional<AskedJob> asked_job(const Options& options, const Streams& to, Problems& problems) {
  const FilesOnDisk files(telling(to.err));
  std::optional<Job> job = read_job(files, options.job_file, options.data_dir, problems);
  if (job) check_outputs(options, *job, to.printed_to, problems);
  if (!job || !problems.empty()) return std::nullopt;
  const auto now = planning_time(options, *job, problems);
  const auto at = options.at ? time_given("--at", *options.at, *job, problems) : now;
  if (options.command == Command::drying) check_coating(options.coating, *job, problems);
  if (options.last_plan)
    if (const auto text = files.text(*options.last_plan, problems))
      job->last_plan = parse_last_plan(*text, options.last_plan->string(), job->id, problems);
  if (!now || !at || !problems.empty()) return std::nullopt;
  return AskedJob{std::move(*job), *now, *at};
}

}  // namespace tackfree
