#include "tackfree/solver/check.hpp"

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
       "two things"},
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

}  // namespace
}  // namespace tackfree::solver
