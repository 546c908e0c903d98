// Small problems: random scheduling problems with every rule on, for property tests.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <numeric>
#include <random>

namespace tackfree::solver::testing {

/// A table by end slot: `wait` slots later, `wait + 3` in the second quarter of the horizon (a cold
/// spell), never beyond the horizon. Not decreasing.
inline LagTable waiting_table(Slot horizon, Slot wait) {
  LagTable table(static_cast<std::size_t>(horizon) + 1, never);
  Slot last = 0;
  for (Slot e = 0; e <= horizon; ++e) {
    const bool cold = e >= horizon / 4 && e < horizon / 2;
    const Slot ready = std::max(last, e + wait + (cold ? 3 : 0));
    last = ready;
    table[static_cast<std::size_t>(e)] = ready <= horizon ? ready : never;
  }
  return table;
}

/// Three to five short activities in two windows, most of them coats of one product that takes up
/// to three slots of setting up and one of cleaning up; half may start in few slots only.
inline SchedulingProblem narrow_hours(unsigned seed) {
  constexpr Slot horizon = 20;
  std::mt19937 random(seed);
  auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  SchedulingProblem p;
  p.horizon = horizon;
  p.windows = {{0, 3 + below(3)}, {7, 18}};
  LagTable at_once(horizon + 1);
  std::iota(at_once.begin(), at_once.end(), Slot{0});
  p.tables = {at_once};
  p.products.push_back({1 + below(3), below(2)});
  const int count = 3 + below(3);
  for (int i = 0; i < count; ++i) {
    const auto number = static_cast<std::size_t>(i);
    const int open_of_ten = below(2) == 0 ? 9 : 2;
    std::vector<Rule> start(horizon, Rule{1});
    for (const Run window : p.windows)
      for (Slot s = window.begin; s < window.end; ++s)
        if (below(10) < open_of_ten) start[static_cast<std::size_t>(s)] = no_rule;
    p.open_times.emplace_back(start);
    p.activities.push_back({.duration = 1, .open_time = number});
    if (below(3) > 0) p.activities.back().product = 0;
    if (i > 0 && below(3) == 0)
      p.lags.push_back({.from = number - 1, .to = number, .delay = below(3)});
    p.goals.push_back({number, 0});
  }
  return p;
}

/// One to three groups, each: dusty splittable work, one or two coats with a wait between them.
inline SchedulingProblem random_problem(unsigned seed, Slot horizon, int groups_at_most) {
  std::mt19937 random(seed);
  auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  SchedulingProblem p;
  p.horizon = horizon;
  p.dust_settles = below(3);
  p.shortest_piece = 1 + below(2);
  for (Slot at = below(3); at < horizon;) {
    const Slot length = 3 + below(6);
    p.windows.push_back({at, std::min(horizon, at + length)});
    at += length + 1 + below(4);
  }
  p.products.push_back({below(2), below(2)});
  p.products.push_back({1, 1});
  const Slot coat_length = 1 + below(2);
  std::vector<Rule> present(static_cast<std::size_t>(horizon), Rule{1});
  std::vector<Rule> coat_start(static_cast<std::size_t>(horizon), Rule{1});
  for (const Run window : p.windows)
    for (Slot s = window.begin; s < window.end; ++s) {
      present[static_cast<std::size_t>(s)] = no_rule;
      if (s + coat_length <= window.end)
        coat_start[static_cast<std::size_t>(s)] = below(4) == 0 ? Rule{2} : no_rule;
    }
  p.open_times = {OpenTime(present), OpenTime(coat_start)};
  p.tables = {waiting_table(horizon, 1 + below(2)), waiting_table(horizon, 3 + below(3))};
  p.late = {{horizon / 2, horizon}};
  const int groups = 1 + below(groups_at_most);
  for (int g = 0; g < groups; ++g) {
    const std::size_t first = p.activities.size();
    p.activities.push_back(
        {.duration = 1 + below(4), .open_time = 0, .splittable = true, .dusty = true});
    const std::size_t product = static_cast<std::size_t>(below(2));
    const int coats = 1 + below(2);
    for (int c = 0; c < coats; ++c) {
      const std::size_t coat = p.activities.size();
      p.activities.push_back(
          {.duration = coat_length, .open_time = 1, .wet_until = 0, .product = product});
      if (c == 0)
        p.lags.push_back({.from = first, .to = coat, .delay = below(2)});
      else
        p.lags.push_back({.from = coat - 1, .to = coat, .table = 1});
    }
    p.goals.push_back({p.activities.size() - 1, 1});
  }
  return p;
}

/// The same with more rules on: space held until dry, maximum lags (constant and by table),
/// families that their own dust does not harm, two rooms. With `general`, also two workers, work
/// that needs nobody, and lags between the lines of work.
inline SchedulingProblem problem_with_every_rule(unsigned seed, Slot horizon, int groups_at_most,
                                                 bool general) {
  SchedulingProblem p = random_problem(seed, horizon, groups_at_most);
  std::mt19937 random(seed + 77777);
  auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  p.resources = {2 + below(2)};
  // Drawn apart, so that the other rules stay as they were.
  if (seed % 3 == 0)
    p.standing = {
        {0, 1 + static_cast<int>(seed / 3 % 3), static_cast<Slot>(seed / 9 % 7) * horizon / 8}};
  LagTable latest(static_cast<std::size_t>(horizon) + 1);
  const Slot within = 3 + below(6);
  for (Slot e = 0; e <= horizon; ++e) {
    const bool warm = e < horizon / 3;
    latest[static_cast<std::size_t>(e)] = e + within + (warm ? 0 : 2);
  }
  p.tables.push_back(latest);
  const bool families = below(2) == 0;
  std::size_t family = 0;
  for (std::size_t i = 0; i < p.activities.size(); ++i) {
    Activity& a = p.activities[i];
    if (a.dusty) ++family;
    if (families) a.family = family;
    if (below(4) == 0) a.room = 1;
    if (a.wet_until && below(4) > 0) a.uses = {{0, 1 + below(2), std::size_t{0}}};
    if (general && !a.product && !a.splittable && below(3) == 0) a.workers = 0;
  }
  const std::vector<Lag> lags = p.lags;
  for (const Lag& lag : lags) {
    if (below(3) > 0) continue;
    if (below(2) == 0)
      p.maximum_lags.push_back({lag.from, lag.to, p.tables.size() - 1, 0});
    else
      p.maximum_lags.push_back(
          {lag.from, lag.to, std::nullopt, lag.table ? 4 + below(6) : below(6)});
  }
  if (!general) return p;
  p.workers = 1 + below(2);
  const auto count = static_cast<int>(p.activities.size());
  const auto a = static_cast<std::size_t>(below(count));
  const auto b = static_cast<std::size_t>(below(count));
  if (a < b && below(2) == 0) p.lags.push_back({a, b, std::nullopt, below(2)});
  if (a != b && below(3) == 0) p.maximum_lags.push_back({a, b, std::nullopt, below(9)});
  return p;
}

}  // namespace tackfree::solver::testing
