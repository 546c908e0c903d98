#include "tackfree/schedule/check_schedule.hpp"

#include <algorithm>
#include <functional>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::Scheduled;

DatedStep& step(Scheduled& s, const std::string& key) {
  for (DatedStep& dated : s.schedule.steps)
    if (s.list.operations[dated.operation].key == key) return dated;
  throw std::runtime_error("no step " + key);
}

void move(DatedStep& step, Minutes by) {
  for (Interval& piece : step.pieces) piece = {piece.begin + by, piece.end + by};
}

struct Planted {
  const char* said;
  std::function<void(Scheduled&)> plant;
};

TEST_CASE("each planted fault in a schedule is found") {
  using std::chrono::hours;
  Job job = testing::sample_job();
  testing::add_legs(job);
  const Scheduled good = testing::scheduled(job);
  REQUIRE(broken_rules(good.job, good.list, good.air, good.schedule).empty());
  const std::string back2 = "top/finish/coat-2/back/coat";
  const Planted faults[] = {
      {"does not wait for top/finish/coat-1/show/coat",
       [](Scheduled& s) { move(step(s, "top/finish/coat-2/both/sand-p240"), -hours(24)); }},
      {"is done outside working hours", [&](Scheduled& s) { move(step(s, back2), hours(6)); }},
      {"sands by machine in quiet hours",
       [](Scheduled& s) {
         s.job.calendar.no_power_sanding = {{0, 24 * 60}};
       }},
      {"min too little", [&](Scheduled& s) { step(s, back2).pieces[0].end -= Minutes(5); }},
      {"min too much", [&](Scheduled& s) { step(s, back2).pieces[0].end += Minutes(30); }},
      {"two things are done",
       [&](Scheduled& s) {
         step(s, "top/finish/coat-2/back/dust-off").pieces = step(s, back2).pieces;
       }},
      {"is dated or given up 0 times", [](Scheduled& s) { s.schedule.steps.pop_back(); }},
      {"is dated or given up 2 times",
       [](Scheduled& s) { s.schedule.steps.push_back(s.schedule.steps.back()); }},
      {"is put on at 8.0 C",
       [](Scheduled& s) {
         s.job.coatings[0].limits.put_on_min.value = celsius(21);
         s.job.air = ConstantAir{celsius(8), humidity_percent(50)};
         Problems problems;
         s.air = AirSeries::over(s.job.air, s.schedule.span, problems).value();
       }},
      {"air too humid",
       [](Scheduled& s) { s.job.coatings[0].limits.humidity_max.value = humidity_percent(45); }},
      {"too near the dew point",
       [](Scheduled& s) { s.job.coatings[0].limits.dew_point_margin.value = kelvins(15); }},
      {"before it is touch-dry",
       [](Scheduled& s) { s.job.coatings[0].limits.hold_min.value = celsius(25); }},
      {"falls under its putting-on temperature",
       [](Scheduled& s) {
         s.job.coatings[0].limits.hold_put_on_min = sourced(tackfree::hours(24), Origin::practice);
         AirRows rows = testing::daily_air("2027-04-05T00:00Z", 24 * 60, 50,
                                           [](int hour) { return hour < 4 ? 9.0 : 20.0; });
         s.job.air = rows;
         Problems problems;
         s.air = AirSeries::over(s.job.air, s.schedule.span, problems).value();
       }},
      {"makes dust while",
       [](Scheduled& s) {
         // The legs are sanded while the top's first coat is wet.
         const DatedStep& coat = step(s, "top/finish/coat-1/back/coat");
         DatedStep& sanding = step(s, "legs/finish/coat-2/both/sand-p240");
         sanding.pieces = {{coat.end() + Minutes(5), coat.end() + Minutes(10)}};
       }},
      {"no proper set-up or clean-up",
       [](Scheduled& s) { s.schedule.sessions[0].set_up.begin += Minutes(5); }},
      {"stands in the session of another product",
       [](Scheduled& s) { s.schedule.sessions[0].method += 1; }},
      {"is in 0 sessions", [](Scheduled& s) { s.schedule.sessions.pop_back(); }},
      {"not inside one stretch",
       [](Scheduled& s) { s.schedule.sessions[0].set_up.begin -= hours(4); }},
      {"is split",
       [&](Scheduled& s) {
         Interval& piece = step(s, back2).pieces[0];
         const Interval rest{piece.begin + Minutes(5), piece.end};
         piece.end = piece.begin + Minutes(5);
         step(s, back2).pieces.push_back(rest);
       }},
      {"has a piece outside the plan", [](Scheduled& s) { s.schedule.span.begin += hours(48); }},
      {"right after dusting off",
       [](Scheduled& s) { move(step(s, "top/finish/coat-2/back/dust-off"), -hours(24)); }},
      {"is dated without",
       [&](Scheduled& s) {
         const auto dust = std::find_if(
             s.schedule.steps.begin(), s.schedule.steps.end(), [&](const DatedStep& d) {
               return s.list.operations[d.operation].key == "top/finish/coat-2/back/dust-off";
             });
         s.schedule.unplaced.push_back({.operation = dust->operation});
         s.schedule.steps.erase(dust);
       }},
  };
  for (const Planted& fault : faults) {
    CAPTURE(fault.said);
    Scheduled spoilt = good;
    fault.plant(spoilt);
    const auto broken = broken_rules(spoilt.job, spoilt.list, spoilt.air, spoilt.schedule);
    CHECK(std::any_of(broken.begin(), broken.end(), [&](const std::string& rule) {
      return rule.find(fault.said) != std::string::npos;
    }));
  }
}

bool says(const Scheduled& s, const std::string& what) {
  const auto broken = broken_rules(s.job, s.list, s.air, s.schedule);
  return std::any_of(broken.begin(), broken.end(),
                     [&](const std::string& rule) { return rule.find(what) != std::string::npos; });
}

TEST_CASE("oil left on, wiped too soon or in portions too large is found") {
  Job job = testing::sample_job("drying_oil");
  job.systems[0].steps[0].coats = 2;
  job.batches[0].sides = Sides::on_points;
  const Scheduled good = testing::scheduled(job);
  REQUIRE(broken_rules(good.job, good.list, good.air, good.schedule).empty());
  const std::string wipe = "top/finish/coat-1/both/wipe-off";
  Scheduled late = good;
  move(step(late, wipe), Minutes(30));
  CHECK(says(late, "is not wiped off when its time has come"));
  CHECK(says(late, "is wiped off too late"));
  Scheduled soon = good;
  move(step(soon, wipe), -Minutes(10));
  CHECK(says(soon, "is not wiped off when its time has come"));
  Scheduled large = good;
  large.job.data.methods[0].rate.value = square_metres_per_hour(4);
  CHECK(says(large, "portions too large"));
  Scheduled never = good;
  std::erase_if(never.schedule.steps,
                [&](const DatedStep& s) { return never.list.operations[s.operation].key == wipe; });
  CHECK(says(never, "is never wiped off"));
}

/// Open all day: only the rules of the finish hold the coats back.
Job lacquer_all_day() {
  Job job = testing::sample_job("nitrocellulose_lacquer");
  job.systems[0].steps[0].coats = 5;
  job.batches[0].sides = Sides::on_points;
  for (auto& day : job.calendar.weekly) day = {{6 * 60, 24 * 60}};
  return job;
}

TEST_CASE("four coats of lacquer in a day are found (rule 4)") {
  Job job = lacquer_all_day();
  const Scheduled good = testing::scheduled(job, "2027-04-05T00:00Z");
  REQUIRE(broken_rules(good.job, good.list, good.air, good.schedule).empty());
  job.coatings[0].coats_a_day_max = sourced(20, Origin::measured);
  Scheduled many = testing::scheduled(job, "2027-04-05T00:00Z");
  many.job.coatings[0].coats_a_day_max = sourced(3, Origin::practice);
  CHECK(says(many, "is one coat too many"));
  // The wait itself is audited as well.
  Scheduled hurried = testing::scheduled(job, "2027-04-05T00:00Z");
  hurried.list = good.list;
  hurried.job.coatings[0].coats_a_day_max.reset();
  CHECK(says(hurried, "does not wait for top/finish/coat-1/both/coat"));
}

TEST_CASE("a coat before those below have dried as one film is found (rule 4)") {
  Job job = testing::sample_job("shellac");
  job.batches[0].sides = Sides::on_points;
  job.coatings[0].needs_sanding_between = false;
  job.systems[0].steps[0].coats = 3;
  for (auto& day : job.calendar.weekly) day = {{8 * 60, 20 * 60}};
  job.calendar.no_power_sanding.clear();
  const Scheduled good = testing::scheduled(job, "2027-04-05T00:00Z");
  REQUIRE(broken_rules(good.job, good.list, good.air, good.schedule).empty());
  Scheduled hurried = good;
  for (Operation& op : hurried.list.operations)
    for (Wait& wait : op.waits) wait.films = 1;
  const Interval span = good.schedule.span;
  hurried.schedule = make_schedule(hurried.job, hurried.list, hurried.air,
                                   drying_clocks(hurried.job, hurried.air), span);
  CHECK(says(hurried, "does not wait for the 2 coats below, which dry as one"));
}

TEST_CASE("a coat past the window of an unsanded one is found (rule 2)") {
  Job job = testing::sample_job();
  job.coatings[0].needs_sanding_between = false;  // evenings only: 12 h are over by the next one
  job.coatings[0].recoat_unsanded_within = sourced(days(7), Origin::label);
  Scheduled late = testing::scheduled(job);
  REQUIRE(broken_rules(late.job, late.list, late.air, late.schedule).empty());
  late.job.coatings[0].recoat_unsanded_within = sourced(hours(12), Origin::label);
  CHECK(says(late, "comes past the window of the coat below and is not sanded for"));
}

TEST_CASE("waterborne over stain before its time on the clock is found (rule 5)") {
  Job job = testing::sample_job("waterborne_polyurethane");
  job.coatings.push_back(testing::named(testing::class_of(job.data, "oil_stain"), "stain"));
  job.systems[0].steps.insert(job.systems[0].steps.begin(),
                              {"stain", "stain", "wipe", 1, std::nullopt, 0});
  const Scheduled good = testing::scheduled(job);
  REQUIRE(broken_rules(good.job, good.list, good.air, good.schedule).empty());
  job.data.follows.clear();
  Scheduled hurried = testing::scheduled(job);
  hurried.list = good.list;
  CHECK(says(hurried, "does not wait for top/stain/coat-1/show/coat"));
}

}  // namespace
}  // namespace tackfree
