#include "tackfree/solver/window_search.hpp"

#include "tackfree/solver/serial.hpp"

#include "bench/check.hpp"
#include "bench/list_decoder.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

constexpr std::int64_t enough_steps = 1'000'000;

/// One search, of so many partial schedules at most.
WindowSearchResult window_search(const SchedulingProblem& p, const std::vector<Chain>& chains,
                                 const SearchAim& aim, std::int64_t most_partials) {
  return WindowSearcher(p, chains).begin(aim)->go_on(most_partials);
}

/// When a serial schedule is ready; never when it leaves something out.
Slot ready_serially(const SchedulingProblem& p) {
  const Worth w = worth(p, serial_schedule(p));
  return w.unplaced > 0 ? never : w.ready;
}

TEST_CASE("a target that a schedule meets is met, and what is found keeps the rules") {
  int compared = 0;
  for (unsigned seed = 0; seed < 600; ++seed) {
    const SchedulingProblem p = testing::problem_with_every_rule(seed, 40, 3, false);
    const auto chains = chains_of(p);
    if (!chains) continue;
    const Slot known = ready_serially(p);
    if (known == never) continue;
    ++compared;
    CAPTURE(seed);
    const auto exact = window_search(p, *chains, {.target = known}, enough_steps);
    CHECK(exact.complete);
    REQUIRE(exact.starts.size() == p.activities.size());
    std::vector<Slot> starts(p.activities.size());
    for (const auto& [activity, start] : exact.starts) starts[activity] = start;
    const Solution found = solution_from(p, starts);
    for (const std::string& broken : violations(p, found)) FAIL_CHECK(broken);
    CHECK(worth(p, found).ready <= known);
    const auto loose =
        window_search(p, *chains, {.target = known, .loose_limits = true}, enough_steps);
    CHECK_FALSE(loose.starts.empty());
  }
  CHECK(compared > 150);
}

TEST_CASE("a beam that leaves something out says so, and so does a limit on partial schedules") {
  int left_out = 0;
  for (unsigned seed = 0; seed < 200; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 60, 3);
    const auto chains = chains_of(p);
    const Slot known = ready_serially(p);
    if (known == never) continue;
    const SearchAim aim{.target = known - 1};
    const auto whole = window_search(p, *chains, aim, enough_steps);
    SearchAim narrow = aim;
    narrow.beam = 1;
    const auto beam = window_search(p, *chains, narrow, enough_steps);
    CHECK((!beam.complete || beam.starts.empty() == whole.starts.empty()));
    if (!beam.complete) ++left_out;
    if (whole.partials > 2 && whole.starts.empty())
      CHECK_FALSE(window_search(p, *chains, aim, 2).complete);
  }
  CHECK(left_out > 10);
}

TEST_CASE("a narrow beam for few sessions keeps what has sessions to spare") {
  int searched = 0, found = 0;
  for (unsigned seed = 0; seed < 3000; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 60, 3);
    const auto chains = chains_of(p);
    const Solution known = serial_schedule(p);
    const Worth w = worth(p, known);
    if (w.unplaced > 0 || w.ready == never || w.sessions < 2) continue;
    SearchAim aim{.target = w.ready,
                  .cheaper_than = Cost{static_cast<std::int32_t>(w.sessions), 0}};
    if (window_search(p, *chains, aim, enough_steps).starts.empty()) continue;
    ++searched;
    aim.beam = 1;
    if (!window_search(p, *chains, aim, enough_steps).starts.empty()) ++found;
  }
  // 195 of 287; 172 when only hours count.
  CHECK(searched > 250);
  CHECK(found > searched * 13 / 20);
}

TEST_CASE("a search that is left and gone on with finds and proves what it does in one go") {
  int parts = 0;
  for (unsigned seed = 0; seed < 100; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 60, 3);
    const auto chains = chains_of(p);
    const Slot known = ready_serially(p);
    if (known == never) continue;
    const SearchAim aim{.target = known};
    const auto whole = window_search(p, *chains, aim, enough_steps);
    REQUIRE(whole.ended);
    const auto ongoing = WindowSearcher(p, *chains).begin(aim);
    WindowSearchResult last;
    std::int64_t partials = 0;
    for (; !last.ended && partials <= whole.partials; ++parts) {
      last = ongoing->go_on(1);
      partials += last.partials;
    }
    CHECK(last.complete);
    CHECK(last.starts == whole.starts);
    CHECK(partials == whole.partials);
  }
  CHECK(parts > 500);
}

}  // namespace
}  // namespace tackfree::solver
