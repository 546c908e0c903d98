// A rule that is added never makes the best schedule ready sooner, one that is taken away never
// later: no outside source is needed for that, only that both problems are settled.
#include "tackfree/solver/proof_search.hpp"
#include "tackfree/solver/serial.hpp"

#include <algorithm>
#include <random>

#include "bench/order_search.hpp"
#include "effort.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

/// When the best schedule is ready, proved; never when it is proved that there is none.
Slot soonest(const SchedulingProblem& p) {
  const Solution known = serial_schedule(p);
  auto found = best_schedule(p, known, 2'000'000);
  if (!found) found = best_by_order(p, known, 4'000'000);
  REQUIRE(found);
  if (found->infeasible) return never;
  REQUIRE(found->ready_proved);
  return worth(p, found->solution).ready;
}

using Random = std::mt19937;
std::size_t below(Random& random, std::size_t n) { return random() % n; }

void close_a_window(SchedulingProblem& p, Random& random) {
  const std::size_t closed = below(random, p.windows.size());
  const Run window = p.windows[closed];
  p.windows.erase(p.windows.begin() + static_cast<std::ptrdiff_t>(closed));
  for (OpenTime& time : p.open_times) {
    std::vector<Rule> rules;
    for (Slot s = 0; s < time.horizon(); ++s)
      rules.push_back(window.begin <= s && s < window.end ? Rule{9} : time.rule(s));
    time = OpenTime(rules);
  }
}

void add_a_lag(SchedulingProblem& p, Random& random) {
  const std::size_t to = 1 + below(random, p.activities.size() - 1);
  p.lags.push_back({below(random, to), to, std::nullopt, static_cast<Slot>(below(random, 6))});
}

void add_a_use(SchedulingProblem& p, Random& random) {
  Activity& activity = p.activities[below(random, p.activities.size())];
  if (activity.uses.empty())
    activity.uses = {{0, 1 + static_cast<int>(below(random, 2)), std::size_t{0}}};
  else
    ++activity.uses.front().amount;
}

void add_a_limit(SchedulingProblem& p, Random& random) {
  if (p.lags.empty()) return;
  const Lag& lag = p.lags[below(random, p.lags.size())];
  p.maximum_lags.push_back({lag.from, lag.to, std::nullopt, static_cast<Slot>(below(random, 9))});
}

/// A rule added to random problems, or, read the other way, taken away from them.
template <class Add>
void check_never_sooner(unsigned first, Add&& add) {
  int later = 0, lost = 0;
  for (unsigned seed = first; seed < first + tackfree::testing::cases(250U); ++seed) {
    Random random(seed + 4711);
    SchedulingProblem p = testing::problem_with_every_rule(seed, 30, 2, false);
    for (Product& product : p.products)
      if (seed % 2 == 0) product = {0, 0};
    if (p.activities.size() < 2) continue;
    SchedulingProblem with = p;
    add(with, random);
    // What is no problem of chains any more is settled by orders, without set-up and clean-up.
    if (!best_schedule(with, serial_schedule(with), 1) || !best_schedule(p, serial_schedule(p), 1))
      for (SchedulingProblem* each : {&p, &with})
        for (Product& product : each->products) product = {0, 0};
    CAPTURE(seed);
    const Slot before = soonest(p), after = soonest(with);
    CHECK(after >= before);
    if (after > before) ++(after == never ? lost : later);
  }
  CHECK(later + lost > tackfree::testing::cases(10));
}

TEST_CASE("a window that is closed makes nothing ready sooner") {
  check_never_sooner(1000, close_a_window);
}
TEST_CASE("a wait that is added makes nothing ready sooner") {
  check_never_sooner(2000, add_a_lag);
}
TEST_CASE("space that is needed makes nothing ready sooner") {
  check_never_sooner(3000, add_a_use);
}
TEST_CASE("a limit on a wait makes nothing ready sooner") { check_never_sooner(4000, add_a_limit); }

TEST_CASE("a rule that is taken away makes nothing ready later") {
  int sooner = 0;
  for (unsigned seed = 5000; seed < 5000 + tackfree::testing::cases(200U); ++seed) {
    SchedulingProblem p = testing::problem_with_every_rule(seed, 30, 2, false);
    for (Product& product : p.products) product = {0, 0};
    const Slot before = soonest(p);
    if (seed % 3 == 0) p.maximum_lags.clear();
    if (seed % 3 == 1) p.resources = {1000};
    if (seed % 3 == 2)
      std::for_each(p.activities.begin(), p.activities.end(), [](Activity& a) { a.dusty = false; });
    CAPTURE(seed);
    const Slot after = soonest(p);
    CHECK(after <= before);
    if (after < before) ++sooner;
  }
  CHECK(sooner > tackfree::testing::cases(10));
}

}  // namespace
}  // namespace tackfree::solver
