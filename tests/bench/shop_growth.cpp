// Shop jobs of growing size: time, memory, and the gap to a proved bound. The jobs are invented:
// batches with three coats on both sides, weekdays 8 to 12 and 13 to 17, slots of 15 minutes.
#include "tackfree/solver/fluid_bound.hpp"

#include <algorithm>
#include <cmath>
#include <ctime>
#include <numeric>
#include <random>
#include <vector>

#include "bench/check.hpp"
#include "bench/list_decoder.hpp"
#include <fmt/format.h>
#include <sys/resource.h>

namespace {

using namespace tackfree::solver;

constexpr Slot an_hour = 4;
constexpr Slot a_day = 24 * an_hour;

/// By end: when `hours` at label conditions are over, in air that is half as fast at night.
LagTable drying(Slot horizon, int hours) {
  LagTable table(static_cast<std::size_t>(horizon) + 1, never);
  auto pace = [](Slot s) { return s % a_day >= 8 * an_hour && s % a_day < 20 * an_hour ? 2 : 1; };
  Slot at = 0;
  int done = 0;
  for (Slot e = 0; e <= horizon; ++e) {
    while (at < horizon && done < hours * an_hour * 2) done += pace(at++);
    table[static_cast<std::size_t>(e)] = done >= hours * an_hour * 2 ? at : never;
    if (at > e) done -= pace(e);
  }
  return table;
}

SchedulingProblem shop(int batches, int workers, bool two_rooms) {
  std::mt19937_64 random(static_cast<std::uint64_t>(batches));
  auto from_to = [&](int least, int most) {
    return least + static_cast<int>(random() % static_cast<std::uint64_t>(most - least + 1));
  };
  SchedulingProblem p;
  p.workers = workers;
  p.horizon = a_day * (30 + batches * 4 / workers);
  p.dust_settles = 2;
  for (Slot day = 0; day < p.horizon; day += a_day)
    if (day / a_day % 7 < 5)
      for (const Slot begin : {8, 13})
        p.windows.push_back({day + begin * an_hour, day + (begin + 4) * an_hour});
  for (Slot length = 1; length <= 8; ++length) {  // the open time of each length
    std::vector<Rule> closed(static_cast<std::size_t>(p.horizon), Rule{1});
    for (const Run w : p.windows)
      for (Slot s = w.begin; s + length <= w.end; ++s)
        closed[static_cast<std::size_t>(s)] = no_rule;
    p.open_times.emplace_back(closed);
  }
  LagTable own;
  for (Slot e = 0; e <= p.horizon; ++e) own.push_back(e);
  p.tables = {own, drying(p.horizon, 1), drying(p.horizon, 2), drying(p.horizon, 3)};
  auto add = [&](Activity a) {
    a.open_time = static_cast<std::size_t>(a.duration - 1);
    p.activities.push_back(a);
    return p.activities.size() - 1;
  };
  for (int b = 0; b < batches; ++b) {
    const auto family = static_cast<std::size_t>(b);
    const Slot coat = from_to(1, 3), between = from_to(1, 2);
    const Activity sanding{.dusty = true, .room = two_rooms ? std::size_t{1} : 0, .family = family};
    Activity first = sanding;
    first.duration = from_to(2, 8);
    std::size_t last = add(first);
    std::size_t wait = 0;  // 0: none
    for (int c = 0; c < 3; ++c)
      for (int side = 0; side < 2; ++side) {
        Activity before = side == 0 ? sanding : Activity{};
        before.duration = side == 0 ? between : 1;
        if (c > 0 || side > 0) {
          const std::size_t step = add(before);
          p.lags.push_back({last, step, side == 0 ? std::size_t{3} : std::size_t{2}, 0});
          last = step;
          wait = 0;
        }
        const std::size_t coating = add({.duration = coat, .wet_until = 1, .family = family});
        p.lags.push_back({last, coating, wait > 0 ? std::optional(wait) : std::nullopt, 0});
        last = coating;
      }
    const std::size_t hardware = add({.duration = 2});
    p.lags.push_back({last, hardware, std::size_t{3}, 0});
    p.goals.push_back({hardware, 0});
  }
  return p;
}

/// Places left in the chain, so that those with most to come are placed first.
std::vector<std::size_t> by_rest(const SchedulingProblem& p) {
  std::vector<int> rest(p.activities.size(), 0);
  for (std::size_t n = p.lags.size(); n-- > 0;)
    rest[p.lags[n].from] = std::max(rest[p.lags[n].from], rest[p.lags[n].to] + 1);
  std::vector<std::size_t> list(p.activities.size());
  std::iota(list.begin(), list.end(), std::size_t{0});
  std::stable_sort(list.begin(), list.end(),
                   [&](std::size_t a, std::size_t b) { return rest[a] > rest[b]; });
  return list;
}

/// By chain: one batch after another.
std::vector<std::size_t> by_batch(const SchedulingProblem& p) {
  std::vector<std::size_t> list(p.activities.size());
  std::iota(list.begin(), list.end(), std::size_t{0});
  return list;
}

double line(int batches, int workers, bool two_rooms) {
  const SchedulingProblem p = shop(batches, workers, two_rooms);
  const std::clock_t begin = std::clock();
  ListDecoder decoder(p);
  std::optional<Timed> best;
  for (const auto& list : {by_rest(p), by_batch(p)}) {
    auto timed = decoder.decode(list);
    if (!timed) continue;
    if (!best || timed->ready < best->ready) best = timed;
    // Again in the order of starts, as long as that helps.
    while (timed) {
      std::vector<std::size_t> again = list;
      std::stable_sort(again.begin(), again.end(), [&](std::size_t a, std::size_t b) {
        return timed->starts[a] < timed->starts[b];
      });
      timed = decoder.decode(again);
      if (!timed || timed->ready >= best->ready) break;
      best = timed;
    }
  }
  const Slot bound = fluid_bound(p);
  const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  if (!best) {
    fmt::print("{:7} {:10} {:7} {:5}  no schedule found\n", batches, p.activities.size(), workers,
               two_rooms ? 2 : 1);
    return seconds;
  }
  const bool sound = violations(p, solution_from(p, best->starts)).empty();
  fmt::print("{:7} {:10} {:7} {:5} {:8} {:8} {:6.2f} % {:8.2f} s {:6} MB  {}\n", batches,
             p.activities.size(), workers, two_rooms ? 2 : 1, best->ready, bound,
             100.0 * (best->ready - bound) / best->ready, seconds, used.ru_maxrss / 1024,
             sound ? "checked" : "BREAKS RULES");
  return seconds;
}

}  // namespace

int main() {
  fmt::print("batches activities workers rooms    ready    bound      gap     time  memory\n");
  for (const bool two_rooms : {true, false}) {
    std::vector<std::pair<double, double>> points;
    for (const int batches : {50, 100, 200, 500}) {
      const double seconds = line(batches, std::max(1, batches / 60), two_rooms);
      points.emplace_back(std::log(batches), std::log(std::max(seconds, 1e-3)));
    }
    double x = 0, y = 0, xx = 0, xy = 0;
    for (const auto& [a, b] : points) {
      x += a;
      y += b;
      xx += a * a;
      xy += a * b;
    }
    const auto n = static_cast<double>(points.size());
    fmt::print("time grows as n^{:.2f}\n", (n * xy - x * y) / (n * xx - x * x));
  }
  return 0;
}
