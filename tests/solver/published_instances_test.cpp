// Source of the optima: tests/published/scheduling/README.md; of PSPLIB, Kolisch and Sprecher,
// European Journal of Operational Research 96 (1997), 205-216.
#include "tackfree/solver/proof_search.hpp"
#include "tackfree/solver/serial.hpp"

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "bench/check.hpp"
#include "bench/instance.hpp"
#include "bench/order_search.hpp"
#include <doctest/doctest.h>

namespace tackfree::bench {
namespace {

using solver::Worth;

const std::string folder = std::string(TACKFREE_ROOT) + "/tests/published/scheduling/";

TEST_CASE("the finishing instances: makespan and sessions as published, both proved") {
  std::ifstream optima(folder + "optima.tsv");
  std::string line;
  std::getline(optima, line);
  int instances = 0;
  while (std::getline(optima, line)) {
    std::istringstream in(line);
    std::string name;
    std::size_t activities = 0, sessions = 0;
    solver::Slot makespan = 0;
    in >> name >> activities >> makespan >> sessions;
    CAPTURE(name);
    const Instance instance = read_instance(folder + name + ".json");
    REQUIRE(instance.problem.activities.size() == activities);
    const auto found = solver::best_schedule(instance.problem,
                                             solver::serial_schedule(instance.problem), 2'000'000);
    REQUIRE(found);
    CHECK(found->ready_proved);
    CHECK(found->sessions_proved);
    const Worth worth = solver::worth(instance.problem, found->solution);
    CHECK(worth.ready == makespan);
    CHECK(worth.sessions == sessions);
    for (const std::string& broken : solver::violations(instance.problem, found->solution))
      FAIL_CHECK(broken);
    ++instances;
  }
  CHECK(instances == 8);
}

TEST_CASE(
    "PSPLIB with maximum lags, where TACKFREE_PSPLIB names its folder: settled as published") {
  const char* psplib = std::getenv("TACKFREE_PSPLIB");
  if (psplib == nullptr) {
    MESSAGE("TACKFREE_PSPLIB is not set: not run");
    return;
  }
  std::ifstream optima(std::string(psplib) + "/optima.tsv");
  std::string file, makespan;
  std::getline(optima, file);
  int instances = 0;
  while (optima >> file >> makespan) {
    if (file.find(".SCH") == std::string::npos) continue;
    CAPTURE(file);
    const Instance instance = read_instance(std::string(psplib) + "/" + file);
    const auto found = solver::best_by_order(instance.problem,
                                             solver::serial_schedule(instance.problem), 4'000'000);
    REQUIRE(found);
    if (makespan == "infeasible") {
      CHECK(found->infeasible);
    } else {
      CHECK(found->ready_proved);
      CHECK(std::to_string(solver::worth(instance.problem, found->solution).ready) == makespan);
    }
    ++instances;
  }
  CHECK(instances == 20);
}

TEST_CASE("a small project with a maximum lag is read as it is written") {
  // Two activities of 3 and 2 slots that share one unit; 2 starts at most 2 after 1 starts or any
  // time before: so 2 goes first and the project takes 5.
  const std::string text =
      "2 1 0 0\n0 1 2 1 2 [0] [0]\n1 1 1 3 [3]\n2 1 2 3 1 [2] [-2]\n3 1 0\n"
      "0 0 0 0\n1 1 3 1\n2 1 2 1\n3 0 0 0\n1\n";
  const Instance instance = maximum_lag_instance("small.SCH", text);
  CHECK(instance.problem.maximum_lags.size() == 1);
  const auto found =
      solver::best_by_order(instance.problem, solver::serial_schedule(instance.problem), 100'000);
  REQUIRE(found);
  CHECK(found->ready_proved);
  CHECK(solver::worth(instance.problem, found->solution).ready == 5);
}

TEST_CASE("files that are no instances are named, with the line where there are lines") {
  auto fault_of = [](auto&& read) -> std::string {
    try {
      read();
    } catch (const BadInstance& bad) {
      return bad.what();
    }
    return "none";
  };
  CHECK(fault_of([] { read_instance("/nowhere/x.json"); }) == "/nowhere/x.json: cannot be read");
  CHECK(fault_of([] { finishing_instance("a.json", "["); }) == "a.json: is no JSON object");
  CHECK(fault_of([] { finishing_instance("a.json", "{}"); }) == "a.json: T is missing");
  CHECK(fault_of([] { maximum_lag_instance("a.SCH", "2 1 0 0\n0 1 2 1\n"); }) ==
        "a.SCH:2: not a successor and one lag for each");
  CHECK(fault_of([] { maximum_lag_instance("a.SCH", ""); }) == "a.SCH:1: the file ends too soon");
  CHECK(fault_of([] { single_mode_instance("a.sm", "x"); }).find("jobs (incl. is missing") !=
        std::string::npos);
}

}  // namespace
}  // namespace tackfree::bench
