#include "tackfree/solver/partial_dominance.hpp"

#include <algorithm>
#include <cstring>
#include <random>

#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

struct Fixture {
  Fixture() {
    p.horizon = 40;
    p.windows = {{0, 40}};
    p.open_times = {OpenTime(std::vector<Rule>(40, no_rule))};
    p.tables = {testing::waiting_table(40, 3)};
    p.activities = {{.duration = 2}, {.duration = 2}, {.duration = 2}};
    p.lags = {{.from = 0, .to = 1, .table = 0}};
    p.goals = {{1, 0}, {2, 0}};
    chains = *chains_of(p);
    b.done = {1, 0};
    b.free = 10;
    b.ready[0][0] = 12;
  }
  SchedulingProblem p;
  std::vector<Chain> chains;
  PartialSchedule b;
};

TEST_CASE("sooner free and ready is as good, later in anything that still matters is not") {
  Fixture f;
  const PartialBounds bounds(f.p, f.chains, 40);
  const PartialDominance dominance(f.chains, bounds, true);
  PartialSchedule a = f.b;
  a.free = 8;
  CHECK(dominance.as_good(a, f.b));
  CHECK_FALSE(dominance.as_good(f.b, a));
  a.wet_until[0] = 9;  // over before the other may start anything
  CHECK(dominance.as_good(a, f.b));
  a.wet_until[0] = 11;
  CHECK_FALSE(dominance.as_good(a, f.b));
  a = f.b;
  a.ready[0][0] = 13;
  CHECK_FALSE(dominance.as_good(a, f.b));
  a = f.b;
  a.held[0][0] = {15, 1};
  CHECK_FALSE(dominance.as_good(a, f.b));
  a = f.b;
  a.cost.sessions = 1;
  CHECK_FALSE(dominance.as_good(a, f.b));
  CHECK(PartialDominance(f.chains, bounds, false).as_good(a, f.b));
}

TEST_CASE("a limit is worse than none and than a later one") {
  Fixture f;
  const PartialBounds bounds(f.p, f.chains, 40);
  const PartialDominance dominance(f.chains, bounds, false);
  PartialSchedule a = f.b;
  a.latest[0][0] = 20;
  CHECK_FALSE(dominance.as_good(a, f.b));
  CHECK(dominance.as_good(f.b, a));
  PartialSchedule c = a;
  c.latest[0][0] = 21;
  CHECK(dominance.as_good(c, a));
  CHECK_FALSE(dominance.as_good(a, c));
}

TEST_CASE("more done is better unless the last of it keeps the chain waiting too long") {
  Fixture f;
  const PartialBounds bounds(f.p, f.chains, 40);
  const PartialDominance dominance(f.chains, bounds, false);
  PartialSchedule less = f.b;
  less.done = {0, 0};
  less.ready[0][0] = 0;
  PartialSchedule more =
      f.b;  // the other would start the first link at 10 and the second at 15 or later
  more.ready[0][0] = 15;
  CHECK(dominance.as_good_and_further(more, less));
  more.ready[0][0] = 30;
  CHECK_FALSE(dominance.as_good_and_further(more, less));
  more.ready[0][0] = 12;
  more.latest[0][0] = 35;
  CHECK_FALSE(dominance.as_good_and_further(more, less));
}

TEST_CASE("what lets another chain begin later is not as good, unless it comes before any start") {
  SchedulingProblem p;
  for (unsigned seed = 0; p.activities.empty() || groups_of(p).back() == 0; ++seed)
    p = testing::random_problem(seed, 40, 2);
  const auto group = groups_of(p);
  const auto second = static_cast<std::size_t>(
      std::find(group.begin(), group.end(), std::size_t{1}) - group.begin());
  p.lags.push_back({.from = 0, .to = second, .table = 0});
  const auto chains = chains_of(p);
  REQUIRE(chains);
  const PartialBounds bounds(p, *chains, 40);
  const PartialDominance dominance(*chains, bounds, false);
  PartialSchedule a, b;
  a.done[0] = b.done[0] = 1;
  a.free = b.free = 5;
  a.crossed[0] = 9;
  b.crossed[0] = 12;
  CHECK(dominance.as_good(a, b));
  CHECK_FALSE(dominance.as_good(b, a));
  b.crossed[0] = 3;
  a.crossed[0] = 5;
  CHECK(dominance.as_good(a, b));
  // What is still to do lets the other begin no sooner than it can end.
  b.done[0] = 0;
  a.crossed[0] = 39;
  CHECK_FALSE(dominance.as_good_and_further(a, b));
  a.crossed[0] = 5;
  CHECK(dominance.as_good_and_further(a, b));
}

TEST_CASE("progress in eight chains is compared as if chain by chain") {
  std::mt19937_64 random(1);
  int further = 0;
  for (int n = 0; n < 20000; ++n) {
    std::array<std::uint8_t, most_chains> a{}, b{};
    bool each = true;
    for (std::size_t g = 0; g < most_chains; ++g) {
      a[g] = static_cast<std::uint8_t>(random() % (most_links + 1));
      b[g] = static_cast<std::uint8_t>(random() % 3 == 0 ? a[g] : random() % (a[g] + 2U));
      b[g] = std::min<std::uint8_t>(b[g], most_links);
      each = each && a[g] >= b[g];
    }
    std::uint64_t packed_a = 0, packed_b = 0;
    std::memcpy(&packed_a, a.data(), sizeof packed_a);
    std::memcpy(&packed_b, b.data(), sizeof packed_b);
    CHECK(is_further(packed_a, packed_b) == each);
    further += each;
  }
  CHECK(further > 100);
  CHECK(further < 19900);
}

}  // namespace
}  // namespace tackfree::solver
