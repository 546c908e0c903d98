#include "bench/check.hpp"

#include "tackfree/solver/serial.hpp"

#include <functional>

#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

/// Twenty open slots; sanding, two coats of one product, and a wait between them.
SchedulingProblem sand_and_coat_twice() {
  SchedulingProblem p;
  p.horizon = 20;
  p.windows = {{0, 20}};
  p.open_times = {OpenTime(std::vector<Rule>(20, no_rule))};
  p.tables = {testing::waiting_table(20, 1), testing::waiting_table(20, 3)};
  p.products = {{1, 1}};
  p.dust_settles = 1;
  p.activities = {{.duration = 2, .splittable = true, .dusty = true},
                  {.duration = 1, .wet_until = 0, .product = 0},
                  {.duration = 1, .wet_until = 0, .product = 0}};
  p.lags = {{.from = 0, .to = 1, .delay = 1}, {.from = 1, .to = 2, .table = 1}};
  return p;
}

struct Planted {
  const char* what;
  std::function<void(SchedulingProblem&, Solution&)> plant;
  const char* said;
};

TEST_CASE("each planted fault is found, and the unspoilt schedule has none") {
  const SchedulingProblem good = sand_and_coat_twice();
  const Solution solved = serial_schedule(good);
  REQUIRE(worth(good, solved).unplaced == 0);
  REQUIRE(violations(good, solved).empty());
  const Planted faults[] = {
      {"too short", [](auto&, auto& s) { s.activities[0].pieces[0].end -= 1; }, "takes 1 slots"},
      {"lag",
       [](auto&, auto& s) {
         s.activities[2].pieces[0] = {4, 5};
       },
       "before lag 1"},
      {"closed slot",
       [](auto& p, auto&) {
         std::vector<Rule> rules(20, no_rule);
         rules[0] = 1;
         p.open_times[0] = OpenTime(rules);
       },
       "closed slot 0"},
      {"two at once",
       [](auto&, auto& s) {
         s.activities[0].pieces = {{1, 2}, {3, 4}};
       },
       "more things at once"},
      {"dust",
       [](auto& p, auto& s) {
         p.lags.clear();
         s.activities[0].pieces = {{s.activities[1].end() + 1, s.activities[1].end() + 3}};
         p.tables[0] = testing::waiting_table(20, 9);
       },
       "dust of activity 0"},
      {"session not listed", [](auto&, auto& s) { s.sessions.pop_back(); }, "sessions are listed"},
      {"no room to clean up", [](auto& p, auto& s) { p.windows[0].end = s.activities[2].end(); },
       "does not fit window"},
      {"split whole work",
       [](auto&, auto& s) {
         s.activities[1].pieces.push_back({9, 9});
       },
       "is split"},
      {"placed without predecessor", [](auto&, auto& s) { s.activities[0].pieces.clear(); },
       "is placed without"},
      {"maximum lag by a constant",
       [](auto& p, auto& s) {
         const Slot gap = s.activities[2].begin() - s.activities[1].end();
         p.maximum_lags = {{1, 2, std::nullopt, gap}, {1, 2, std::nullopt, gap - 1}};
       },
       "after maximum lag 1 is over"},
      {"maximum lag by a table",
       [](auto& p, auto&) {
         p.tables.push_back(testing::waiting_table(20, 2));
         p.maximum_lags = {{1, 2, std::size_t{1}, 9}, {1, 2, std::size_t{2}, 0}};
       },
       "after maximum lag 1 is over"},
      {"resource",
       [](auto& p, auto& s) {
         p.resources = {5, 1};
         p.activities[1].uses = {{0, 3, std::nullopt}, {1, 1, std::size_t{1}}};
         p.activities[2].uses = {{0, 3, std::nullopt}, {1, 1, std::nullopt}};
         s.activities[2].pieces[0] = {s.activities[1].end(), s.activities[1].end() + 1};
       },
       "2 of resource 1 are used"},
      {"three things by two workers",
       [](auto& p, auto& s) {
         p.workers = 2;
         for (auto& a : s.activities) a.pieces[0] = s.activities[0].pieces[0];
       },
       "2 workers do more things"},
      {"dust in the other room does no harm, in this one it does",
       [](auto& p, auto& s) {
         p.lags.clear();
         p.tables[0] = testing::waiting_table(20, 15);
         s.activities[0].pieces = {{s.activities[1].end() + 1, s.activities[1].end() + 3}};
         p.activities[2].room = 1;
         p.activities[1].family = 1;
         p.activities[0].family = 2;
       },
       "dust of activity 0 falls on activity 1"},
      {"beyond the horizon", [](auto& p, auto&) { p.horizon = 5; }, "leaves the horizon"},
  };
  for (const Planted& fault : faults) {
    CAPTURE(fault.what);
    SchedulingProblem p = good;
    Solution s = solved;
    fault.plant(p, s);
    bool found = false;
    for (const std::string& text : violations(p, s))
      found = found || text.find(fault.said) != std::string::npos;
    CHECK(found);
  }
}

TEST_CASE("dust spares its own family and other rooms; resources at their capacity are in order") {
  SchedulingProblem p = sand_and_coat_twice();
  Solution s = serial_schedule(p);
  p.lags.clear();
  p.tables[0] = testing::waiting_table(20, 15);
  s.activities[0].pieces = {{s.activities[1].end() + 1, s.activities[1].end() + 3}};
  REQUIRE_FALSE(violations(p, s).empty());
  p.activities[2].room = 1;
  p.activities[0].family = p.activities[1].family = 1;
  CHECK(violations(p, s).empty());
  p.activities[1].uses = {{0, 2, std::size_t{0}}};
  p.activities[2].uses = {{0, 2, std::size_t{0}}};
  p.resources = {4};
  CHECK(violations(p, s).empty());
  p.resources = {3};
  CHECK_FALSE(violations(p, s).empty());
}

}  // namespace
}  // namespace tackfree::solver
