#include "tackfree/logged/left_out.hpp"

#include "tackfree/base/shell_word.hpp"
#include "tackfree/logged/log_facts.hpp"
#include "tackfree/operations/repairs.hpp"
#include "tackfree/takeoff/lots.hpp"
#include "tackfree/takeoff/surface_takeoff.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// `lines` are in order.
void leave_out(History& history, std::vector<LeftOutLine> lines) {
  std::erase_if(history.entries, [&](const LogEntry& entry) {
    return std::ranges::binary_search(lines, entry.line, {}, &LeftOutLine::line);
  });
  std::ranges::move(lines, std::back_inserter(history.left_out));
  std::ranges::stable_sort(history.left_out, {}, &LeftOutLine::line);
}

std::string withdrawal(const Job& job, const LeftOutLine& line) {
  return fmt::format("to withdraw it: tackfree log withdraw {} {}", shell_word(job.file),
                     line.id != 0 ? fmt::to_string(line.id) : fmt::format("--line {}", line.line));
}

}  // namespace

LoggedWork logged_work(const Job& given, const SurfaceTakeoff& takeoff, Instant now) {
  Job job = given;
  const JobVolumes expected =
      job_volumes(job, takeoff, std::vector<double>(job.coatings.size(), 1.0));
  // Without one line another may fit no more: each round leaves fewer entries.
  while (true) {
    LoggedWork work;
    work.keyed = sanded_by_log(job);
    work.list = with_repairs(operation_list(job, takeoff, expected, work.keyed), job, work.keyed);
    work.facts = log_facts(work.list, job, now);
    if (!work.facts.misfits.empty()) {
      leave_out(job.history, std::move(work.facts.misfits));
      continue;
    }
    mark_done(work.list, work.facts);
    work.history = std::move(job.history);
    return work;
  }
}

History fitting_history(const Job& job, Instant now) {
  if (job.history.entries.empty()) return job.history;
  Problems problems;
  Job in_lots = job;
  split_into_lots(in_lots, problems);
  return problems.empty() ? logged_work(in_lots, take_off(in_lots), now).history : job.history;
}

Problems left_out_problems(const Job& job) {
  Problems problems;
  for (const LeftOutLine& line : job.history.left_out)
    for (const Problem& why : line.why) {
      Problem& problem = problems.emplace_back(why);
      if (&why != &line.why.back()) continue;
      problem.hint += (problem.hint.empty() ? "" : "; ") + withdrawal(job, line);
    }
  return problems;
}

}  // namespace tackfree
