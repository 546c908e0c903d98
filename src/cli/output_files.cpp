#include "tackfree/cli/output_files.hpp"

#include "tackfree/base/text_file.hpp"
#include "tackfree/cli/kept_plan.hpp"
#include "tackfree/export/csv.hpp"

#include <algorithm>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// A file that an option has written, tables for a spreadsheet one by one.
struct Output {
  std::string option;
  std::filesystem::path path;
};

std::vector<Output> outputs(const Options& options) {
  std::vector<Output> all;
  const auto add = [&](const char* option, const std::optional<std::filesystem::path>& path) {
    if (path) all.push_back({option, *path});
  };
  add("--json", options.json_file);
  add("--calendar", options.calendar_file);
  add("--page", options.page_file);
  if (!options.csv_folder) return all;
  if (*options.csv_folder == standard_output) {
    all.push_back({"--csv", standard_output});
    return all;
  }
  for (const CsvFile& file : csv_files) all.push_back({"--csv", *options.csv_folder / file.name});
  return all;
}

/// A file in use, and why nothing else may go there.
struct Use {
  FileIdentity file;
  std::string why;
  bool json_may_replace = false;
};

std::vector<Use> files_in_use(const Options& options, const Job& job) {
  std::vector<Use> uses;
  for (const FileRead& read : job.files_read)
    if (auto file = identity_of(read.path))
      uses.push_back(
          {std::move(*file), fmt::format("this is {}, and it would be lost", read.what)});
  if (options.last_plan)
    if (auto file = identity_of(*options.last_plan))
      uses.push_back(
          {std::move(*file), "this is the last plan, which --json alone may replace", true});
  if (auto file = identity_of(kept_plan_path(job.file)))
    uses.push_back({std::move(*file), "this is where the plan is kept"});
  return uses;
}

void refuse(const Output& output, std::string_view why, Problems& problems) {
  problems.push_back({.key = output.option,
                      .found = output.path.string(),
                      .wanted = fmt::format("wanted another file: {}", why)});
}

/// At most one file can be printed, and no folder.
void check_printed(const std::vector<Output>& all, Problems& problems) {
  const Output* first = nullptr;
  for (const Output& output : all) {
    if (output.path != standard_output) continue;
    if (output.option == "--csv")
      problems.push_back({.key = "--csv",
                          .found = standard_output,
                          .wanted = "wanted a folder: three tables cannot be printed as one"});
    else if (first != nullptr)
      refuse(output, fmt::format("{} is printed already", first->option), problems);
    else
      first = &output;
  }
}

}  // namespace

bool prints_a_file(const Options& options) {
  return std::ranges::any_of(outputs(options),
                             [](const Output& each) { return each.path == standard_output; });
}

void write_or_print(const std::filesystem::path& path, std::string_view text, std::ostream& out,
                    Problems& problems) {
  if (path == standard_output)
    out << text;
  else
    write_text_file(path, text, problems);
}

void check_outputs(const Options& options, const Job& job,
                   const std::optional<FileIdentity>& printed_to, Problems& problems) {
  const std::vector<Output> all = outputs(options);
  check_printed(all, problems);
  std::vector<Use> uses = files_in_use(options, job);
  const auto take = [&](const Output& output, const std::optional<FileIdentity>& file) {
    if (!file) return;
    const auto use = std::ranges::find_if(uses, [&](const Use& each) {
      return each.file == *file && !(each.json_may_replace && output.option == "--json");
    });
    if (use != uses.end()) refuse(output, use->why, problems);
    uses.push_back({*file, fmt::format("{} goes there", output.option)});
  };
  take({"standard output", {}}, printed_to);
  for (const Output& output : all)
    if (output.path != standard_output) take(output, identity_of(output.path));
}

}  // namespace tackfree
