#include "tackfree/cli/run.hpp"

#include "tackfree/cli/area_command.hpp"
#include "tackfree/cli/buy_command.hpp"
#include "tackfree/cli/check_command.hpp"
#include "tackfree/cli/choices_command.hpp"
#include "tackfree/cli/drying_command.hpp"
#include "tackfree/cli/log_command.hpp"
#include "tackfree/cli/plan_command.hpp"
#include "tackfree/cli/problem_list.hpp"
#include "tackfree/cli/progress_line.hpp"
#include "tackfree/cli/shelf_command.hpp"
#include "tackfree/cli/start_command.hpp"
#include "tackfree/cli/tonight_command.hpp"
#include "tackfree/words/display_text.hpp"

#include <exception>
#include <ostream>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

ExitCode report_problems(const Problems& problems, std::ostream& err) {
  print_problems(problems, err);
  err << fmt::format("{} {} found\n", problems.size(),
                     problems.size() == 1 ? "mistake" : "mistakes");
  return exit_wrong_input;
}

/// What a command makes of a job that has no mistakes.
ExitCode answer(const Options& options, AskedJob asked, const Streams& to, Problems& problems) {
  switch (options.command) {
    case Command::plan:
      return plan_command(options, std::move(asked), to, problems);
    case Command::choices:
      return choices_command(options, asked, to, problems);
    case Command::area:
      return area_command(options, asked, to, problems);
    case Command::buy:
      return buy_command(options, std::move(asked), to, problems);
    case Command::check:
      return check_command(options, std::move(asked), to, problems);
    case Command::drying:
      return drying_command(options, asked, to, problems);
    case Command::tonight:
      return tonight_command(options, std::move(asked), to, problems);
    case Command::log:
      return log_command(options, std::move(asked), to, problems);
    case Command::shelf:
      return shelf_command(options, asked, to, problems);
    case Command::start:
      break;
  }
  return exit_bug;
}

std::optional<AskedJob> job_read(const Options& options, const Streams& to, Problems& problems) {
  ProgressLine line(to.progress);
  line.at("reading the files");
  return asked_job(options, to, problems);
}

/// Every command: reads the job, answers, and tells the mistakes.
ExitCode run_command(const Options& options, const Streams& to) {
  Problems problems;
  ExitCode code = exit_wrong_input;
  if (options.command == Command::start)
    code = start_command(options, to, problems);
  else if (auto asked = job_read(options, to, problems))
    code = answer(options, std::move(*asked), to, problems);
  return problems.empty() ? code : report_problems(problems, to.err);
}

/// Of a line that is written the log tells by itself.
bool is_told(const Options& options, ExitCode code, const std::ostream& out) {
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
    const ExitCode code = run_command(
        *read.options, {out, err, columns, terminal.coloured ? Ink::coloured : Ink::plain,
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
