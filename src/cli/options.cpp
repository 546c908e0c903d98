#include "tackfree/cli/options.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/base/problem.hpp"

#include <algorithm>
#include <map>

#include <CLI/CLI.hpp>

namespace tackfree {

namespace {

const char* const description =
    "Plans wood finishing: litres and tins, coats and grits, and the day and hour of every step.";

/// The library's own message says only that a command is required.
std::optional<ReadOptions> unknown_command(const std::vector<std::string>& arguments) {
  const std::vector<std::string> known{"plan", "area", "buy", "check", "start", "drying"};
  if (arguments.empty() || arguments[0].starts_with('-') ||
      std::find(known.begin(), known.end(), arguments[0]) != known.end())
    return std::nullopt;
  const Problem problem{
      .found = arguments[0], .wanted = "wanted a command", .hint = name_hint(arguments[0], known)};
  return ReadOptions{std::nullopt, to_text(problem) + "\n", true};
}

CLI::App* plan_command(CLI::App& app, Options& options) {
  CLI::App* plan = app.add_subcommand("plan", "Plan a job and print the plan");
  plan->add_option("job", options.job_file, "Job file (JSON)")->required();
  plan->add_option("--json", options.json_file, "Write the plan as JSON to this file");
  plan->add_option("--calendar", options.calendar_file,
                   "Write calendar events (iCalendar) to this file");
  plan->add_option("--work-calendar", options.work_calendar_file,
                   "Write calendar events of the work alone to this file");
  plan->add_option("--waits-calendar", options.waits_calendar_file,
                   "Write calendar events of waits, airings and milestones to this file");
  plan->add_option("--csv", options.csv_folder,
                   "Write steps.csv, areas.csv and shopping.csv for a spreadsheet to this folder");
  plan->add_option("--page", options.page_file,
                   "Write the plan as one HTML file for a browser or paper to this file");
  const std::map<std::string, AiringChoice> airings{{"given", AiringChoice::given},
                                                    {"proposed", AiringChoice::proposed}};
  plan->add_option("--airing", options.airing,
                   "Air as the job says (given), or as a first plan proposes (proposed)")
      ->transform(CLI::CheckedTransformer(airings));
  return plan;
}

CLI::App* drying_command(CLI::App& app, Options& options) {
  CLI::App* drying = app.add_subcommand(
      "drying", "Tell what comes of a coat at one hour: rules that fail, when it is dry, and why");
  drying->add_option("job", options.job_file, "Job file (JSON)")->required();
  drying->add_option("--coating", options.coating, "Name of a coating of the job")->required();
  drying->add_option("--at", options.at,
                     "When it is put on, written as for --now; without it, now");
  drying->add_option("--json", options.json_file, "Write the answer as JSON to this file");
  return drying;
}

}  // namespace

ReadOptions read_options(const std::vector<std::string>& arguments) {
  CLI::App app(description, "tackfree");
  app.require_subcommand(1);
  app.set_version_flag("--version", "tackfree " TACKFREE_VERSION);
  app.footer("Exit codes: 0 done, 2 a mistake in what was given, 3 a step has no time, 1 a bug.");
  Options options;

  CLI::App* plan = plan_command(app, options);
  CLI::App* buy = app.add_subcommand("buy", "Plan a job and print only what to buy");
  buy->add_option("job", options.job_file, "Job file (JSON)")->required();
  buy->add_option("--json", options.json_file, "Write the shopping list as JSON to this file");

  CLI::App* area = app.add_subcommand("area", "Print a job's areas by part, grain and side");
  area->add_option("job", options.job_file, "Job file (JSON)")->required();
  area->add_option("--json", options.json_file, "Write the areas as JSON to this file");

  CLI::App* check =
      app.add_subcommand("check", "Read a job's files and report every mistake in them");
  check->add_option("job", options.job_file, "Job file (JSON)")->required();

  CLI::App* drying = drying_command(app, options);

  for (CLI::App* command : {plan, buy, drying})
    command->add_option(
        "--now", options.now,
        "Plan as of this time: 2027-04-05T17:45 in the job's zone, or with Z or an offset");
  for (CLI::App* command : {plan, area, buy, drying})
    command
        ->add_option(
            "--width", options.width,
            "Columns of what is printed, 40 to 200; else those of the terminal, up to 120, "
            "or 80")
        ->check(CLI::Range(40, 200));
  for (CLI::App* command : {plan, area, buy, check, drying})
    command->add_option("--data", options.data_dir,
                        "Folder with finishing data, in place of the built-in data");

  CLI::App* start =
      app.add_subcommand("start", "Write a small job to begin with into a new folder");
  start->add_option("folder", options.folder, "Folder to make")->required();

  if (auto mistake = unknown_command(arguments)) return std::move(*mistake);
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
  try {
    app.parse(reversed);
  } catch (const CLI::ParseError& fault) {
    std::ostringstream out, err;
    const int code = app.exit(fault, out, err);
    return {std::nullopt, out.str() + err.str(), code != 0};
  }
  if (*area) options.command = Command::area;
  if (*buy) options.command = Command::buy;
  if (*check) options.command = Command::check;
  if (*start) options.command = Command::start;
  if (*drying) options.command = Command::drying;
  return {options, {}, false};
}

}  // namespace tackfree
