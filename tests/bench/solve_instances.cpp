// Solves scheduling instances and prints a line for each: file, status, makespan, sessions, proof
// and seconds of processor time. `--bound` adds the proved lower bound and the steps taken;
// `--ready-only` proves no sessions.
#include "tackfree/solver/proof_search.hpp"
#include "tackfree/solver/serial.hpp"

#include <cstdlib>
#include <ctime>
#include <exception>
#include <string>
#include <vector>

#include "bench/check.hpp"
#include "bench/instance.hpp"
#include "bench/order_search.hpp"
#include <fmt/format.h>

namespace {

using namespace tackfree;

struct Outcome {
  std::string line;
  bool broken = false;  ///< the checker found fault with the schedule
};

Outcome solve(const std::string& path, std::int64_t steps, bool with_bound, solver::Prove prove) {
  const bench::Instance instance = bench::read_instance(path);
  const std::clock_t begin = std::clock();
  solver::Solution solution = solver::serial_schedule(instance.problem);
  bool ready_proved = false, all_proved = false, infeasible = false;
  std::string bound;
  auto found = solver::best_schedule(instance.problem, solution, steps, solver::any_number, prove);
  if (!found) found = solver::best_by_order(instance.problem, solution, 2 * steps);
  if (found) {
    solution = found->solution;
    ready_proved = found->ready_proved;
    all_proved = found->ready_proved && (found->sessions_proved || !instance.counts_sessions);
    infeasible = found->infeasible;
    if (with_bound) bound = fmt::format(" {} {}", found->ready_bound, found->partials);
  }
  const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  const solver::Worth worth = solver::worth(instance.problem, solution);
  const bool whole = worth.unplaced == 0 && worth.ready != solver::never;
  Outcome outcome;
  for (const std::string& fault : solver::violations(instance.problem, solution)) {
    outcome.broken = true;
    fmt::print(stderr, "{}: {}\n", path, fault);
  }
  const char* status = !whole ? "infeasible" : ready_proved ? "optimal" : "feasible";
  const bool proved = whole ? all_proved : infeasible;
  outcome.line =
      fmt::format("{} {} {} {} {} {:.3f}", path, status, whole ? std::to_string(worth.ready) : "-",
                  whole && instance.counts_sessions ? std::to_string(worth.sessions) : "-",
                  proved ? "yes" : "no", seconds) +
      bound;
  return outcome;
}

}  // namespace

int main(int count, char** words) {
  std::int64_t steps = 4'000'000;
  bool with_bound = false;
  auto prove = solver::Prove::ready_and_sessions;
  std::vector<std::string> paths;
  for (int i = 1; i < count; ++i) {
    const std::string word = words[i];
    if (word == "--steps" && i + 1 < count)
      steps = std::strtoll(words[++i], nullptr, 10);
    else if (word == "--bound")
      with_bound = true;
    else if (word == "--ready-only")
      prove = solver::Prove::ready;
    else
      paths.push_back(word);
  }
  if (paths.empty()) {
    fmt::print(stderr, "solve_instances [--steps N] [--bound] [--ready-only] FILE...\n");
    return 2;
  }
  int result = 0;
  for (const std::string& path : paths) {
    try {
      const Outcome outcome = solve(path, steps, with_bound, prove);
      fmt::print("{}\n", outcome.line);
      std::fflush(stdout);
      if (outcome.broken) result = 1;
    } catch (const std::exception& error) {
      fmt::print(stderr, "{}\n", error.what());
      result = 2;
    }
  }
  return result;
}
