#include "tackfree/cli/run.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/base/text_file.hpp"
#include "tackfree/cli/given_time.hpp"
#include "tackfree/cli/kept_plan.hpp"
#include "tackfree/cli/log_command.hpp"
#include "tackfree/cli/options.hpp"
#include "tackfree/cli/output_files.hpp"
#include "tackfree/cli/problem_list.hpp"
#include "tackfree/cli/progress_line.hpp"
#include "tackfree/export/areas_json.hpp"
#include "tackfree/export/choices_json.hpp"
#include "tackfree/export/csv.hpp"
#include "tackfree/export/drying_json.hpp"
#include "tackfree/export/icalendar.hpp"
#include "tackfree/export/plan_json.hpp"
#include "tackfree/html/plan_page.hpp"
#include "tackfree/input/job_reader.hpp"
#include "tackfree/input/last_plan_reader.hpp"
#include "tackfree/input/starter_job.hpp"
#include "tackfree/plan/choices.hpp"
#include "tackfree/plan/coat_outlook.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/left_out.hpp"
#include "tackfree/plan/make_plan.hpp"
#include "tackfree/plan/tonight.hpp"
#include "tackfree/text/area_text.hpp"
#include "tackfree/text/choices_text.hpp"
#include "tackfree/text/outlook_text.hpp"
#include "tackfree/text/plan_text.hpp"
#include "tackfree/text/text_page.hpp"
#include "tackfree/text/tonight_text.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/planning_words.hpp"

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <ostream>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

int report_problems(const Problems& problems, std::ostream& err) {
  print_problems(problems, err);
  err << fmt::format("{} {} found\n", problems.size(),
                     problems.size() == 1 ? "mistake" : "mistakes");
  return exit_wrong_input;
}

/// What is wrong with lines of the log that a plan does without.
void report_left_out(const Problems& problems, std::ostream& err) {
  if (problems.empty()) return;
  print_problems(problems, err);
  err << "What does not count in the log is left out; everything else goes on.\n";
}

/// The time to plan from: --now, else the job's own, else the clock.
std::optional<Instant> planning_time(const Options& options, const Job& job, Problems& problems) {
  if (options.now) return time_given("--now", *options.now, job, problems);
  if (job.now_at) return job.now_at;
  return std::chrono::floor<Minutes>(std::chrono::system_clock::now());
}

/// The last plan that was named, into the job.
void add_last_plan(const Options& options, Job& job, Problems& problems) {
  if (options.last_plan) job.last_plan = read_last_plan(*options.last_plan, job.id, problems);
}

/// Where a command prints what was asked for, and what was wrong.
struct Streams {
  std::ostream& out;
  std::ostream& err;
  int columns = 80;
  Ink ink = Ink::plain;
  std::ostream* progress = nullptr;
  std::optional<FileIdentity> printed_to;

  /// The only way of text to the terminal, besides mistakes: nothing in it can steer one.
  void print(std::string_view text) const { out << printable(text, ink); }
};

/// Tells at once that a log is waited for.
LockPatience telling(std::ostream& err) {
  return {.told = [&err](const std::filesystem::path& file) {
    err << clean(fmt::format("{}: another program keeps it locked; waiting for up to ten seconds",
                             file.string()))
        << std::endl;  // before the wait
  }};
}

/// The job, if it has no mistakes and no output would replace a file that is in use.
std::optional<Job> asked_job(const Options& options, const Streams& to, Problems& problems) {
  std::optional<Job> job = read_job(options.job_file, options.data_dir, problems, telling(to.err));
  if (job) check_outputs(options, *job, to.printed_to, problems);
  return problems.empty() ? std::move(job) : std::nullopt;
}

/// A file that was asked for, or what it would hold where it is to be printed.
void write_or_print(const std::filesystem::path& path, std::string_view text, const Streams& to,
                    Problems& problems) {
  if (path == standard_output)
    to.out << text;
  else
    write_text_file(path, text, problems);
}

void write_csv_files(const std::filesystem::path& folder, const Plan& plan, Problems& problems) {
  std::error_code fault;  // where it cannot be made, writing into it says so
  std::filesystem::create_directories(folder, fault);
  for (const CsvFile& file : csv_files)
    write_text_file(folder / file.name, file.text_of(plan), problems);
}

/// The files that were asked for besides what is printed.
void write_files(const Options& options, const Plan& plan, const Streams& to, Problems& problems) {
  if (options.json_file)
    write_or_print(*options.json_file,
                   options.command == Command::buy ? json_shopping_list(plan) : json_report(plan),
                   to, problems);
  if (options.calendar_file)
    write_or_print(*options.calendar_file, calendar_report(plan), to, problems);
  if (options.work_calendar_file)
    write_or_print(*options.work_calendar_file, calendar_report(plan, Feed::work), to, problems);
  if (options.waits_calendar_file)
    write_or_print(*options.waits_calendar_file, calendar_report(plan, Feed::waits), to, problems);
  if (options.page_file) write_or_print(*options.page_file, html_report(plan), to, problems);
  if (options.csv_folder) write_csv_files(*options.csv_folder, plan, problems);
}

/// The plan that was asked for, and the kept one that it went on from.
struct AskedPlan {
  Plan plan;
  KeptPlanFile kept;
};

/// On the terminal what is being worked out, where that takes a while.
std::optional<AskedPlan> asked_plan(const Options& options, const Streams& to, Problems& problems) {
  ProgressLine line(to.progress);
  const auto stage = [&](const PlanningNow& now) { line.at(planning_words(now)); };
  line.at("reading the files");
  std::optional<Job> job = asked_job(options, to, problems);
  const auto now = job ? planning_time(options, *job, problems) : std::nullopt;
  if (job) add_last_plan(options, *job, problems);
  if (!now || !problems.empty()) return std::nullopt;
  KeptPlanFile kept(options, *job, *now);
  if (!options.last_plan) job->last_plan = kept.last_plan();
  solver::Effort effort{most_effort};
  std::optional<Plan> plan = make_plan(*job, *now, problems, stage, &effort);
  if (plan && plan->room && plan->room->proposed && options.airing == AiringChoice::proposed) {
    Job again = std::move(*job);
    again.room.airing = plan->room->proposed;
    effort = effort_after(effort);
    plan = make_plan(std::move(again), *now, problems, stage, &effort);
  }
  if (!plan) return std::nullopt;
  return AskedPlan{std::move(*plan), std::move(kept)};
}

/// What was only asked about is not kept: it would be taken for what the person goes by.
bool is_to_be_kept(const Options& options) {
  return options.command == Command::plan && options.keep && options.airing == AiringChoice::given;
}

int plan_command(const Options& options, const Streams& to) {
  Problems problems;
  const std::optional<AskedPlan> asked = asked_plan(options, to, problems);
  if (!asked || !problems.empty()) return report_problems(problems, to.err);
  const Plan& plan = asked->plan;
  report_left_out(left_out_problems(plan.job), to.err);
  to.err << asked->kept.fault();
  write_files(options, plan, to, problems);
  if (!prints_a_file(options))
    to.print(options.command == Command::buy ? text_shopping_list(plan, to.columns, to.ink)
                                             : text_report(plan, to.columns, to.ink));
  if (is_to_be_kept(options)) to.err << asked->kept.replace(plan);
  if (!problems.empty()) return report_problems(problems, to.err);
  return plan.schedule.unplaced.empty() ? exit_done : exit_not_plannable;
}

int choices_command(const Options& options, const Streams& to) {
  Problems problems;
  std::optional<Choices> found;
  {
    ProgressLine line(to.progress);
    const auto stage = [&](const PlanningNow& now) { line.at(planning_words(now)); };
    stage({PlanningStage::dates});
    std::optional<Job> job = asked_job(options, to, problems);
    const auto now = job ? planning_time(options, *job, problems) : std::nullopt;
    if (now && problems.empty()) found = choices_of(std::move(*job), *now, problems, stage);
  }
  if (!found || !problems.empty()) return report_problems(problems, to.err);
  report_left_out(left_out_problems(found->ways.front().job), to.err);
  if (options.json_file) write_or_print(*options.json_file, choices_json(*found), to, problems);
  if (!prints_a_file(options)) to.print(choices_text(*found, to.columns, to.ink));
  if (!problems.empty()) return report_problems(problems, to.err);
  return found->ways.front().schedule.unplaced.empty() ? exit_done : exit_not_plannable;
}

int area_command(const Options& options, const Streams& to) {
  Problems problems;
  std::optional<Job> job = asked_job(options, to, problems);
  if (!job || !problems.empty()) return report_problems(problems, to.err);
  report_left_out(left_out_problems(*job), to.err);
  const Plan plan = make_area_plan(std::move(*job));
  if (options.json_file) write_or_print(*options.json_file, area_json(plan), to, problems);
  if (!prints_a_file(options)) to.print(area_text(plan, to.columns, to.ink));
  return problems.empty() ? exit_done : report_problems(problems, to.err);
}

int check_command(const Options& options, const Streams& to) {
  Problems problems;
  std::optional<Job> job = asked_job(options, to, problems);
  const auto now = job ? planning_time(options, *job, problems) : std::nullopt;
  if (now) {
    job->history = fitting_history(*job, *now);
    problems = left_out_problems(*job);
  }
  if (!job || !problems.empty()) return report_problems(problems, to.err);
  to.print(fmt::format("{}: no mistakes found ({} parts, {} batches, {} coatings)\n",
                       clean(options.job_file.string()), job->parts.size(), job->batches.size(),
                       job->coatings.size()));
  return exit_done;
}

int drying_command(const Options& options, const Streams& to) {
  Problems problems;
  const std::optional<Job> job = asked_job(options, to, problems);
  if (!job) return report_problems(problems, to.err);
  report_left_out(left_out_problems(*job), to.err);
  const auto now = planning_time(options, *job, problems);
  const auto at = options.at ? time_given("--at", *options.at, *job, problems) : now;
  std::vector<std::string> names;
  for (const Coating& coating : job->coatings) names.push_back(coating.name);
  const auto named = std::find(names.begin(), names.end(), options.coating);
  if (named == names.end())
    problems.push_back(
        {.key = "--coating",
         .found = options.coating,
         .wanted = fmt::format("wanted a coating of the job: {}", fmt::join(names, ", ")),
         .hint = name_hint(options.coating, names)});
  if (!now || !at || !problems.empty()) return report_problems(problems, to.err);
  const auto outlook =
      coat_outlook(*job, static_cast<std::size_t>(named - names.begin()), *at, *now, problems);
  if (!outlook) return report_problems(problems, to.err);
  if (options.json_file)
    write_or_print(*options.json_file, outlook_json(*job, *outlook), to, problems);
  if (!prints_a_file(options)) to.print(outlook_text(*job, *outlook, to.columns, to.ink));
  return problems.empty() ? exit_done : report_problems(problems, to.err);
}

int log_command(const Options& options, const Streams& to) {
  Problems problems;
  const std::optional<Job> job = asked_job(options, to, problems);
  const auto now = job ? planning_time(options, *job, problems) : std::nullopt;
  Logged answer;
  if (now && problems.empty())
    answer = logged(options, *job, *now, telling(to.err), to.columns, problems);
  report_left_out(answer.left_out, to.err);
  if (!problems.empty()) return report_problems(problems, to.err);
  to.print(answer.text + answer.written);
  to.out.flush();
  // The line stands. Whoever takes this for a failure logs it twice.
  if (!to.out && !answer.written.empty())
    to.err << answer.written << "Only the answer is lost: standard output cannot be written.\n";
  return exit_done;
}

/// A reading on the command line counts for now, and is not written down.
void add_reading(const LogOptions& told, Instant now, Job& job) {
  if (!told.temp_c && !told.temp_f) return;
  LogEntry reading{.kind = LogKind::air, .written_at = now, .at = now};
  reading.temperature = told.temp_c ? celsius(*told.temp_c) : fahrenheit(*told.temp_f);
  if (told.humidity_pct) reading.humidity = humidity_percent(*told.humidity_pct);
  job.history.entries.push_back(std::move(reading));
}

int tonight_command(const Options& options, const Streams& to) {
  Problems problems;
  std::optional<Job> job = asked_job(options, to, problems);
  const auto now = job ? planning_time(options, *job, problems) : std::nullopt;
  if (job) add_last_plan(options, *job, problems);
  if (!now || !problems.empty()) return report_problems(problems, to.err);
  const KeptPlanFile kept(options, *job, *now);
  to.err << kept.fault();
  const std::vector<LastPlan> planned =
      job->last_plan ? std::vector{*job->last_plan} : kept.plans();
  if (!planned.empty()) job->last_plan = planned.front();
  add_reading(options.log, *now, *job);
  solver::Effort effort{most_effort};
  const std::optional<Plan> plan = make_plan(*job, *now, problems, {}, &effort);
  if (!plan || !problems.empty()) return report_problems(problems, to.err);
  report_left_out(left_out_problems(plan->job), to.err);
  Tonight answer = tonight(*plan);
  solver::Effort what_if = effort_after(effort);
  answer.unlogged = unlogged(*plan, *job, planned, *now, what_if);
  to.print(tonight_text(*plan, answer, to.columns, to.ink));
  return plan->schedule.unplaced.empty() ? exit_done : exit_not_plannable;
}

int start_command(const Options& options, const Streams& to) {
  Problems problems;
  std::error_code fault;
  if (std::filesystem::exists(options.folder, fault) &&
      !std::filesystem::is_empty(options.folder, fault)) {
    problems.push_back({.file = options.folder.string(),
                        .wanted = "is not empty; name a new folder: nothing is overwritten"});
    return report_problems(problems, to.err);
  }
  std::filesystem::create_directories(options.folder, fault);
  for (const StarterFile& file : starter_job())
    write_text_file(options.folder / file.name, file.text, problems);
  if (!problems.empty()) return report_problems(problems, to.err);
  for (const StarterFile& file : starter_job())
    to.print(fmt::format("wrote {}\n", clean((options.folder / file.name).string())));
  return exit_done;
}

int run_command(const Options& options, const Streams& to) {
  switch (options.command) {
    case Command::plan:
    case Command::buy:
      return plan_command(options, to);
    case Command::choices:
      return choices_command(options, to);
    case Command::area:
      return area_command(options, to);
    case Command::check:
      return check_command(options, to);
    case Command::start:
      return start_command(options, to);
    case Command::drying:
      return drying_command(options, to);
    case Command::log:
      return log_command(options, to);
    case Command::tonight:
      return tonight_command(options, to);
  }
  return exit_bug;
}

/// Of a line that is written the log tells by itself.
bool is_told(const Options& options, int code, const std::ostream& out) {
  const bool written =
      options.command == Command::log && !options.log.show && !options.log.only_show;
  return !out.fail() || (written && code == exit_done);
}

}  // namespace

int run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err,
        const Terminal& terminal) {
  const ReadOptions read = read_options(arguments);
  if (!read.options) {
    (read.mistaken ? err : out) << printable(read.text, Ink::plain);
    return read.mistaken ? exit_wrong_input : exit_done;
  }
  try {
    const int columns = read.options->width.value_or(terminal.columns);
    const int code = run_command(*read.options,
                                 {out, err, columns, terminal.coloured ? Ink::coloured : Ink::plain,
                                  terminal.progress, terminal.printed_to});
    out.flush();
    if (is_told(*read.options, code, out)) return code;
    return report_problems({{.key = "standard output",
                             .wanted = "cannot be written; its disk is full, or it is closed"}},
                           err);
  } catch (const std::exception& bug) {
    err << "tackfree has a bug: " << clean(bug.what()) << '\n';
    return exit_bug;
  }
}

}  // namespace tackfree
