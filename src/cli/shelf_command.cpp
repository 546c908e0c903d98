#include "tackfree/cli/shelf_command.hpp"

#include "tackfree/base/shared_file.hpp"
#include "tackfree/cli/problem_list.hpp"
#include "tackfree/export/shelf_json.hpp"
#include "tackfree/input/shelf_reader.hpp"
#include "tackfree/logged/left_out.hpp"
#include "tackfree/plan/make_work_at_hand.hpp"
#include "tackfree/plan/shelf_update.hpp"
#include "tackfree/text/screens.hpp"
#include "tackfree/words/display_text.hpp"

#include <ostream>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Writes the shelf as it stands in the file at that moment, with this job's tins in it.
bool write_shelf_file(const WorkAtHand& work, const Streams& to, Problems& problems) {
  const std::string& file = work.job.shelf->file;
  const auto rewriting = [&](const std::string& text) -> std::optional<std::string> {
    auto shelf = parse_shelf(text, file, work.job.data, problems);
    if (!shelf) return std::nullopt;
    return shelf_json(shelf_after(std::move(*shelf), work.job, work.list), work.job.units);
  };
  return rewrite_shared(file, rewriting, problems, telling(to.err));
}

}  // namespace

ExitCode shelf_command(const Options& options, const AskedJob& asked, const Streams& to,
                       Problems& problems) {
  if (options.write_shelf && !asked.job.shelf) {
    problems.push_back(
        {.file = asked.job.file,
         .key = "shelf_file",
         .wanted = "is missing; --write wanted the file of the shelf that your jobs share"});
    return exit_wrong_input;
  }
  const auto work = make_work_at_hand(asked.job, asked.now, problems);
  if (!work) return exit_wrong_input;
  print_left_out(left_out_problems(work->job), to.err);
  if (options.write_shelf && !write_shelf_file(*work, to, problems)) return exit_wrong_input;
  std::string text = shelf_text(*work, to.columns, to.ink);
  if (options.write_shelf) text += fmt::format("\nWritten to {}\n", clean(work->job.shelf->file));
  to.print(text);
  return exit_done;
}

}  // namespace tackfree
