#include "tackfree/solver/chains.hpp"

#include "tackfree/solver/serial.hpp"

#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

SchedulingProblem two_chains() {
  SchedulingProblem p;
  p.horizon = 30;
  p.windows = {{0, 10}, {15, 30}};
  std::vector<Rule> open(30, no_rule);
  for (std::size_t s = 10; s < 15; ++s) open[s] = 1;
  p.open_times = {OpenTime(open)};
  p.tables = {testing::waiting_table(30, 2)};
  p.products = {{2, 1}};
  p.activities = {{.duration = 3, .splittable = true},
                  {.duration = 2, .wet_until = 0, .product = 0},
                  {.duration = 1}};
  p.lags = {{.from = 0, .to = 1}};
  p.goals = {{1, 0}};
  return p;
}

TEST_CASE("activities joined by lags are one chain, others stand alone") {
  const auto chains = chains_of(two_chains());
  REQUIRE(chains);
  REQUIRE(chains->size() == 2);
  CHECK((*chains)[0].size() == 2);
  CHECK((*chains)[1].front().activity == 2);
  CHECK((*chains)[0][0].waits.size() == 1);
  CHECK((*chains)[0][1].waits.empty());
}

TEST_CASE("starts of session work leave room for set-up and clean-up, split work runs on") {
  const auto chains = chains_of(two_chains());
  const Link& coat = (*chains)[0][1];
  CHECK(coat.next_start[0] == 2);
  CHECK(coat.next_start[8] == 17);  // 7 + 2 + 1 is the window's end
  const Link& sanding = (*chains)[0][0];
  CHECK(sanding.end[8] == 16);  // two slots, then one after the closed hours
}

TEST_CASE("the tail is a bound that holds for every schedule and never falls with a later start") {
  for (unsigned seed = 0; seed < 200; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 40, 3);
    const auto chains = chains_of(p);
    REQUIRE(chains);
    const Slot ready = worth(p, serial_schedule(p)).ready;
    for (const Chain& chain : *chains) {
      CHECK(chain.front().tail[0] <= ready);
      for (const Link& link : chain)
        for (std::size_t s = 1; s < link.tail.size(); ++s) CHECK(link.tail[s] >= link.tail[s - 1]);
    }
  }
}

TEST_CASE("an activity that waits for the middle of a chain begins another, and few may do so") {
  SchedulingProblem p = two_chains();
  p.lags.push_back({.from = 0, .to = 2, .delay = 4});  // 0 -> 1 and 0 -> 2: a fork
  auto chains = chains_of(p);
  REQUIRE(chains);
  REQUIRE(chains->size() == 2);
  REQUIRE((*chains)[0][0].lets_begin.size() == 1);
  CHECK((*chains)[0][0].lets_begin[0].chain == 1);
  CHECK((*chains)[0][0].lets_begin[0].link == 0);
  REQUIRE((*chains)[1][0].begins_after.size() == 1);
  CHECK((*chains)[1][0].begins_after[0].delay == 4);
  for (std::size_t n = 0; n < most_crossings; ++n) p.lags.push_back(p.lags.back());
  CHECK_FALSE(chains_of(p));
  p = two_chains();
  p.maximum_lags.push_back({.from = 0, .to = 2});
  CHECK_FALSE(chains_of(p));
}

TEST_CASE("lags are kept by how far ahead they reach, and too far makes no chain") {
  SchedulingProblem p = two_chains();
  p.lags.push_back({.from = 1, .to = 2});
  p.lags.push_back({.from = 0, .to = 2, .delay = 9});
  p.maximum_lags = {{.from = 0, .to = 2, .delay = 20}};
  const auto chains = chains_of(p);
  REQUIRE(chains);
  REQUIRE(chains->size() == 1);
  const Link& first = (*chains)[0][0];
  REQUIRE(first.waits.size() == 2);
  CHECK(first.waits[1].ahead == 2);
  REQUIRE(first.limits.size() == 1);
  CHECK(first.limits[0].ahead == 2);
  while (p.activities.size() < 6) {
    p.activities.push_back({.duration = 1});
    p.lags.push_back({.from = p.activities.size() - 2, .to = p.activities.size() - 1});
  }
  CHECK(chains_of(p));
  p.maximum_lags[0].to = 5;
  CHECK_FALSE(chains_of(p));
}

TEST_CASE("two resources, two workers or a chain that changes its room make no chains") {
  SchedulingProblem p = two_chains();
  p.workers = 2;
  CHECK_FALSE(chains_of(p));
  p = two_chains();
  p.resources = {1, 1};
  CHECK_FALSE(chains_of(p));
  p = two_chains();
  p.activities[1].room = 1;
  CHECK_FALSE(chains_of(p));
}

}  // namespace
}  // namespace tackfree::solver
