// PSPLIB instances: single-mode projects (`.sm`) and projects with maximum lags (`.SCH`).
// Source of the formats: Kolisch, Sprecher, European Journal of Operational Research 96 (1997),
// 205-216, and the files themselves.
#include <algorithm>
#include <charconv>
#include <sstream>

#include "bench/instance.hpp"
#include <fmt/format.h>

namespace tackfree::bench {

namespace {

using solver::Slot;

constexpr int most = 1'000'000;
constexpr int most_jobs = 10'000;

/// An edge of the network: `to` starts at least `lag` after `from` starts, negative for a maximum.
struct Edge {
  std::size_t from, to;
  Slot lag;
};

struct Project {
  std::vector<Slot> durations;
  std::vector<std::vector<int>> demands;  ///< by job and resource
  std::vector<int> capacities;
  std::vector<Edge> edges;
};

/// The numbers of a line, brackets left out; stops at the first word that is none.
std::vector<int> numbers(std::string line) {
  std::replace_if(
      line.begin(), line.end(), [](char c) { return c == '[' || c == ']'; }, ' ');
  std::istringstream words(line);
  std::vector<int> found;
  std::string word;
  while (words >> word) {
    int value = 0;
    const auto [end, wrong] = std::from_chars(word.data(), word.data() + word.size(), value);
    if (wrong != std::errc{} || end != word.data() + word.size()) break;
    found.push_back(value);
  }
  return found;
}

/// Lines with numbers, in order, with the file's name for complaints.
class Lines {
 public:
  Lines(const std::string& path, const std::string& text) : path_(path), in_(text) {}

  [[noreturn]] void fail(const std::string& what) const {
    throw BadInstance(fmt::format("{}:{}: {}", path_, line_, what));
  }

  void skip_to(const std::string& word) {
    std::string line;
    while (next(line))
      if (line.find(word) != std::string::npos) return;
    fail(word + " is missing");
  }

  /// The next line that begins with a number, which must have `least` of them.
  std::vector<int> row(std::size_t least) {
    std::string line;
    while (next(line)) {
      std::vector<int> found = numbers(line);
      if (found.empty()) continue;
      if (found.size() < least) fail(fmt::format("{} numbers, not {}", found.size(), least));
      for (const int value : found)
        if (value < -most || value > most) fail(fmt::format("{} is out of range", value));
      return found;
    }
    fail("the file ends too soon");
  }

 private:
  bool next(std::string& line) {
    ++line_;
    return static_cast<bool>(std::getline(in_, line));
  }

  std::string path_;
  std::istringstream in_;
  int line_ = 0;
};

/// Edges that are minimum lags in an order in which all of them go on; false when they go round.
bool in_order(const Project& project, std::vector<std::size_t>& order) {
  const std::size_t count = project.durations.size();
  std::vector<int> before(count, 0);
  for (const Edge& e : project.edges)
    if (e.lag >= 0) ++before[e.to];
  std::vector<bool> listed(count, false);
  while (order.size() < count) {
    std::size_t next = 0;
    while (next < count && (listed[next] || before[next] > 0)) ++next;
    if (next == count) return false;
    listed[next] = true;
    order.push_back(next);
    for (const Edge& e : project.edges)
      if (e.from == next && e.lag >= 0) --before[e.to];
  }
  return true;
}

/// Start-to-start lags as the solver's, which count from ends.
Instance as_problem(const Lines& lines, const Project& project) {
  std::vector<std::size_t> order;
  if (!in_order(project, order)) lines.fail("the minimum lags go round in a circle");
  Instance result;
  solver::SchedulingProblem& p = result.problem;
  for (std::size_t i = 0; i < project.durations.size(); ++i) {
    Slot longest = project.durations[i];
    for (const Edge& e : project.edges)
      if (e.from == i) longest = std::max(longest, std::abs(e.lag));
    p.horizon += longest;
    if (p.horizon > most) lines.fail("the project is too long");
  }
  p.horizon += 1;
  p.windows = {{0, p.horizon}};
  p.open_times.emplace_back(std::vector<solver::Rule>(static_cast<std::size_t>(p.horizon), 0));
  p.tables = {own_end(p.horizon)};
  p.resources = project.capacities;
  std::vector<std::size_t> place(order.size());
  for (std::size_t n = 0; n < order.size(); ++n) {
    const std::size_t i = order[n];
    place[i] = n;
    solver::Activity a{.duration = project.durations[i], .workers = 0};
    for (std::size_t r = 0; r < project.capacities.size(); ++r)
      if (project.demands[i][r] > 0) a.uses.push_back({r, project.demands[i][r], std::nullopt});
    p.activities.push_back(std::move(a));
    p.goals.push_back({n, 0});
  }
  for (const Edge& e : project.edges)
    if (e.lag >= 0)
      p.lags.push_back(
          {place[e.from], place[e.to], std::nullopt, e.lag - project.durations[e.from]});
    else
      p.maximum_lags.push_back(
          {place[e.to], place[e.from], std::nullopt, -e.lag - project.durations[e.to]});
  return result;
}

std::size_t job(const Lines& lines, int number, std::size_t first, std::size_t count) {
  if (number < static_cast<int>(first) || number >= static_cast<int>(first + count))
    lines.fail(fmt::format("there is no job {}", number));
  return static_cast<std::size_t>(number) - first;
}

std::size_t how_many(const Lines& lines, int count, const char* what, int at_most) {
  if (count < 0 || count > at_most)
    lines.fail(fmt::format("{} {} are not from 0 to {}", count, what, at_most));
  return static_cast<std::size_t>(count);
}

void read_demands(Lines& lines, const std::vector<int>& row, Project& project) {
  if (row[1] > 1) lines.fail("more than one mode");
  if (row[2] < 0) lines.fail("a negative duration");
  project.durations.push_back(row[2]);
  std::vector<int> demands(row.begin() + 3, row.end());
  for (const int demand : demands)
    if (demand < 0) lines.fail("a negative demand");
  project.demands.push_back(std::move(demands));
}

/// The capacities, and whether each job alone keeps within them.
void read_capacities(Lines& lines, std::size_t resources, Project& project) {
  if (resources > 0) project.capacities = lines.row(resources);
  project.capacities.resize(resources);
}

}  // namespace

Instance single_mode_instance(const std::string& path, const std::string& text) {
  Lines lines(path, text);
  Project project;
  auto after_colon = [&](const std::string& word) {
    std::istringstream again(text);
    std::string line;
    while (std::getline(again, line))
      if (line.find(word) != std::string::npos && line.find(':') != std::string::npos) {
        const auto found = numbers(line.substr(line.find(':') + 1));
        if (!found.empty()) return found[0];
      }
    lines.fail(word + " is missing");
  };
  const std::size_t jobs = how_many(lines, after_colon("jobs (incl."), "jobs", most_jobs);
  const std::size_t resources = how_many(lines, after_colon("- renewable"), "resources", 100);
  lines.skip_to("PRECEDENCE RELATIONS");
  std::vector<std::pair<std::size_t, std::size_t>> successors;
  for (std::size_t j = 0; j < jobs; ++j) {
    const auto row = lines.row(3);
    const std::size_t from = job(lines, row[0], 1, jobs);
    const std::size_t count = how_many(lines, row[2], "successors", most_jobs);
    if (row.size() < 3 + count) lines.fail("fewer successors than said");
    for (std::size_t k = 0; k < count; ++k)
      successors.emplace_back(from, job(lines, row[3 + k], 1, jobs));
  }
  lines.skip_to("REQUESTS/DURATIONS");
  for (std::size_t j = 0; j < jobs; ++j) {
    const auto row = lines.row(3 + resources);
    if (job(lines, row[0], 1, jobs) != j) lines.fail("jobs are not listed in order");
    read_demands(lines, row, project);
  }
  lines.skip_to("RESOURCEAVAILABILITIES");
  read_capacities(lines, resources, project);
  for (const auto& [from, to] : successors)
    project.edges.push_back({from, to, project.durations[from]});
  return as_problem(lines, project);
}

Instance maximum_lag_instance(const std::string& path, const std::string& text) {
  Lines lines(path, text);
  Project project;
  const auto head = lines.row(2);
  const std::size_t jobs = how_many(lines, head[0], "activities", most_jobs) + 2;
  const std::size_t resources = how_many(lines, head[1], "resources", 100);
  for (std::size_t j = 0; j < jobs; ++j) {
    const auto row = lines.row(3);
    const std::size_t from = job(lines, row[0], 0, jobs);
    const std::size_t count = how_many(lines, row[2], "successors", most_jobs);
    if (row.size() != 3 + 2 * count) lines.fail("not a successor and one lag for each");
    for (std::size_t k = 0; k < count; ++k)
      project.edges.push_back({from, job(lines, row[3 + k], 0, jobs), row[3 + count + k]});
  }
  for (std::size_t j = 0; j < jobs; ++j) {
    const auto row = lines.row(3 + resources);
    if (job(lines, row[0], 0, jobs) != j) lines.fail("activities are not listed in order");
    read_demands(lines, row, project);
  }
  read_capacities(lines, resources, project);
  return as_problem(lines, project);
}

}  // namespace tackfree::bench
