#include "tackfree/cli/log_command.hpp"

#include "tackfree/base/appended_file.hpp"
#include "tackfree/cli/given_time.hpp"
#include "tackfree/cli/kept_plan.hpp"
#include "tackfree/cli/problem_list.hpp"
#include "tackfree/evening/log_entry.hpp"
#include "tackfree/input/log_lines.hpp"
#include "tackfree/logged/left_out.hpp"
#include "tackfree/plan/make_plan.hpp"
#include "tackfree/plan/stock.hpp"
#include "tackfree/syntax/measure.hpp"
#include "tackfree/text/screens.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The amount under whichever option has it.
std::optional<Volume> amount(const LogOptions& told, Problems& problems) {
  if (told.litres) return litres(*told.litres);
  if (told.used.empty()) return std::nullopt;
  const Reading<Volume> read = read_volume(told.used);
  if (!read.value) {
    std::string key = "--used";
    if (told.kind == LogKind::tin) key = "size";
    if (told.kind == LogKind::waste) key = "amount";
    problems.push_back({.key = key, .found = told.used, .wanted = read.wanted});
  }
  return read.value;
}

std::optional<Temperature> temperature(const LogOptions& told) {
  if (told.temp_c) return celsius(*told.temp_c);
  if (told.temp_f) return fahrenheit(*told.temp_f);
  return std::nullopt;
}

/// What the plan says to buy, as `plan` and `buy` tell it.
std::vector<BoughtTins> all_to_buy(const Options& options, Job job, Instant now,
                                   Problems& problems) {
  job.last_plan = KeptPlanFile(options, job, now).last_plan();
  const auto plan = make_plan(job, now, problems);
  return plan ? tins_to_buy(plan->job, plan->shopping) : std::vector<BoughtTins>{};
}

/// What `away` and `free` say of somebody's hours.
void add_hours(const LogOptions& told, const Job& job, Instant now, Report& report,
               Problems& problems) {
  const HoursTold hours{told.on, told.from, told.until, told.kind == LogKind::free};
  report.hours = hours_given(hours, job, now, problems);
  report.person = told.person;
}

Report report_of(const Options& options, const Job& job, Instant now, Problems& problems) {
  const LogOptions& told = options.log;
  Report report{.kind = told.kind, .at = now};
  const bool of_hours = told.kind == LogKind::away || told.kind == LogKind::free;
  if (of_hours) add_hours(told, job, now, report, problems);
  if (told.kind == LogKind::bought) report.bought = all_to_buy(options, job, now, problems);
  if (const auto at = moment_given("--at", told.at, job, now, problems)) report.at = *at;
  if (!told.from.empty() && !of_hours)
    report.began_at = moment_given("--from", told.from, job, now, problems);
  report.batch = told.batch;
  report.step = told.step;
  report.coat = told.coat;
  report.side = told.side;
  report.coating = told.coating;
  report.thinner = told.thinner;
  report.amount = amount(told, problems);
  report.temperature = temperature(told);
  if (told.humidity_pct) report.humidity = humidity_percent(*told.humidity_pct);
  if (told.kind == LogKind::test) report.test = told.test;
  report.passed = told.passed;
  if (told.kind == LogKind::fault) report.fault = told.fault;
  if (told.kind == LogKind::tin) report.tin = told.tin;
  report.insists = told.insist;
  report.corrects = told.corrects;
  report.corrects_line = told.corrects_line;
  report.note = told.note;
  if (told.kind == LogKind::withdrawn && !told.corrects && !told.corrects_line)
    problems.push_back({.key = "number",
                        .wanted = "wanted the number of the line that is withdrawn, or --line with "
                                  "its place in the file"});
  if (told.kind == LogKind::air && !report.temperature)
    problems.push_back({.key = "--air-temp-c", .wanted = "wanted the temperature that was read"});
  return report;
}

/// The entry, as far as it is understood from the log as it stands.
struct Understood {
  std::optional<UnderstoodReport> report;
  std::string line;
};

/// When the last thing in the log was so, or now: a plan as of then has every line to judge.
Instant after_all(const History& history, Instant now) {
  for (const LogEntry& entry : history.entries) now = std::max(now, entry.at);
  return now;
}

/// As told of a line that is not written.
Problem without_place(Problem problem) {
  problem.file.clear();
  problem.line = 0;
  return problem;
}

/// Judges the history with the new line `entry` as it was read back. Problems where the line would
/// not count, or where another would not any more; that may come of a line that is taken back.
void judge_read_back(Job after, const LogEntry& entry, Instant now, Problems& problems) {
  const Instant then = after_all(after.history, now);
  Job before = after;
  std::erase_if(before.history.entries, [&](const LogEntry& e) { return e.line == entry.line; });
  after.history = fitting_history(after, then);
  const auto is_known = [&, known = fitting_history(before, then)](int line) {
    return std::ranges::binary_search(known.left_out, line, {}, &LeftOutLine::line);
  };
  for (const LeftOutLine& line : after.history.left_out) {
    const bool is_new = line.line == entry.line;
    if (!is_new && (entry.kind == LogKind::withdrawn || is_known(line.line))) continue;
    for (Problem why : line.why) {
      if (!is_new) why.hint = "this line fits no more with the new one; put one of them right";
      problems.push_back(is_new ? without_place(std::move(why)) : std::move(why));
    }
  }
}

/// What the report comes to with the log as `lines` have it; nothing, with Problems, where no line
/// can be made of it.
Understood understood_from(std::string_view lines, const Report& report, const Job& job,
                           Instant now, Problems& problems) {
  const std::string& file = job.history.file;
  Job standing = job;
  standing.history = read_log({std::string(lines), {}}, file);
  Understood result;
  result.report = understood(standing, report, now, problems);
  if (!result.report || !problems.empty()) return {};
  LogEntry& entry = result.report->entry;
  entry.id = standing.history.next_id;
  entry.line = static_cast<int>(std::ranges::count(lines, '\n')) + 1;
  result.line = log_line(entry, job.calendar.zone);
  standing.history = read_log({fmt::format("{}{}\n", lines, result.line), {}}, file);
  judge_read_back(std::move(standing), entry, now, problems);
  if (!problems.empty()) return {};
  return result;
}

/// What `tackfree log ...` came to.
struct Logged {
  std::string text;     ///< what was understood, or the log
  std::string written;  ///< that a line was written, and where; empty where none was
  Problems left_out;    ///< what is wrong with the lines of the log that do not count
};

/// The answer after the line has been written. Nothing is written where there are Problems. What is
/// understood follows from the log as it is while no other program writes it.
Logged logged(const Options& options, Job job, Instant now, const LockPatience& patience,
              int columns, Problems& problems) {
  const std::string& file = job.history.file;
  Logged answer;
  if (options.log.show) {
    // The log is shown whole, also to a job whose `now_at` lies before it.
    job.history = fitting_history(job, after_all(job.history, now));
    return {log_text(job, columns), {}, left_out_problems(job)};
  }
  const Report report = report_of(options, job, now, problems);
  Understood told;
  const auto line_for = [&](std::string_view lines) -> std::optional<std::string> {
    if (problems.empty()) told = understood_from(lines, report, job, now, problems);
    if (!told.report || options.log.only_show) return std::nullopt;
    return told.line;
  };
  if (options.log.only_show) {
    const auto text = read_appended(file, problems, patience);
    if (text) line_for(text->lines + (is_whole_log_line(text->torn) ? text->torn + "\n" : ""));
  } else if (problems.empty() &&
             append_line(file, {line_for, is_whole_log_line}, problems, patience)) {
    answer.written =
        fmt::format("Written as number {} in {}\n", told.report->entry.id, clean(file));
  }
  if (!told.report || !problems.empty()) {
    job.history = fitting_history(job, now);
    answer.left_out = left_out_problems(job);
    return answer;
  }
  answer.left_out = left_out_problems(told.report->standing.job);
  answer.text = understood_text(*told.report, columns);
  if (options.log.only_show) answer.text += "Nothing was written.\n";
  return answer;
}

}  // namespace

ExitCode log_command(const Options& options, AskedJob asked, const Streams& to,
                     Problems& problems) {
  const Logged answer =
      logged(options, std::move(asked.job), asked.now, telling(to.err), to.columns, problems);
  print_left_out(answer.left_out, to.err);
  if (!problems.empty()) return exit_wrong_input;
  to.print(answer.text + answer.written);
  to.out.flush();
  // The line stands. Whoever takes this for a failure logs it twice.
  if (!to.out && !answer.written.empty())
    to.err << answer.written << "Only the answer is lost: standard output cannot be written.\n";
  return exit_done;
}

}  // namespace tackfree
