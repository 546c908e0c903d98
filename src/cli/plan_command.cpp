#include "tackfree/cli/plan_command.hpp"

#include "tackfree/base/text_file.hpp"
#include "tackfree/cli/asked_plan.hpp"
#include "tackfree/cli/output_files.hpp"
#include "tackfree/export/csv.hpp"
#include "tackfree/export/icalendar.hpp"
#include "tackfree/export/plan_json.hpp"
#include "tackfree/html/plan_page.hpp"
#include "tackfree/text/plan_text.hpp"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

void write_csv_files(const std::filesystem::path& folder, const Plan& plan, Problems& problems) {
  std::error_code fault;  // where it cannot be made, writing into it says so
  std::filesystem::create_directories(folder, fault);
  for (const CsvFile& file : csv_files)
    write_text_file(folder / file.name, file.text_of(plan), problems);
}

/// Index into Job::people; nothing: nobody was asked for, or nobody has that name.
std::optional<std::size_t> person_of(const Options& options, const Job& job) {
  if (!options.calendar_of) return std::nullopt;
  const auto found = std::ranges::find(job.people, *options.calendar_of, &Person::name);
  if (found == job.people.end()) return std::nullopt;
  return static_cast<std::size_t>(found - job.people.begin());
}

void check_person(const Options& options, const Job& job, Problems& problems) {
  if (!options.calendar_of || person_of(options, job)) return;
  std::vector<std::string> names;
  for (const Person& person : job.people) names.push_back(person.name);
  problems.push_back({.key = "--calendar-of",
                      .found = *options.calendar_of,
                      .wanted = names.empty() ? "wanted --calendar alone: the job names no people"
                                              : fmt::format("wanted one of the job's people: {}",
                                                            fmt::join(names, ", "))});
}

/// The files that were asked for besides what is printed.
void write_files(const Options& options, const Plan& plan, const Streams& to, Problems& problems) {
  if (options.json_file) write_or_print(*options.json_file, json_report(plan), to.out, problems);
  if (options.calendar_file)
    write_or_print(*options.calendar_file, calendar_report(plan, person_of(options, plan.job)),
                   to.out, problems);
  if (options.page_file)
    write_or_print(*options.page_file,
                   html_report(plan, options.full ? Printed::whole : Printed::sheets), to.out,
                   problems);
  if (options.csv_folder) write_csv_files(*options.csv_folder, plan, problems);
}

std::string asked_text(const Options& options, const Plan& plan, const Streams& to) {
  if (options.full) return text_report(plan, to.columns, to.ink);
  return options.only ? part_text(plan, *options.only, to.columns, to.ink)
                      : first_screen_text(plan, to.columns, to.ink);
}

/// A line for each file that is written: what, and where.
std::string written_lines(const Options& options) {
  std::string lines;
  const auto tell = [&](std::string_view what, const std::optional<std::filesystem::path>& path) {
    if (path) lines += fmt::format("Wrote {} to {}\n", what, path->string());
  };
  tell("the page", options.page_file);
  tell("the calendar", options.calendar_file);
  tell("the plan as JSON", options.json_file);
  std::vector<std::string_view> tables;
  tables.reserve(csv_files.size());
  for (const CsvFile& file : csv_files) tables.emplace_back(file.name);
  tell(fmt::format("{}", fmt::join(tables, ", ")), options.csv_folder);
  return lines.empty() ? lines : "\n" + lines;
}

}  // namespace

ExitCode plan_command(const Options& options, AskedJob asked, const Streams& to,
                      Problems& problems) {
  check_person(options, asked.job, problems);
  if (!problems.empty()) return exit_wrong_input;
  const auto planned = asked_plan(options, std::move(asked), to, problems);
  if (!planned) return exit_wrong_input;
  const Plan& plan = planned->plan;
  write_files(options, plan, to, problems);
  if (!prints_a_file(options)) {
    to.print(asked_text(options, plan, to));
    if (problems.empty()) to.print(written_lines(options));
  }
  // What was only asked about is not kept: it would be taken for what the person goes by.
  if (options.keep && options.airing == AiringChoice::given) to.err << planned->kept.replace(plan);
  return exit_code(plan);
}

}  // namespace tackfree
