#include "tackfree/schedule/check_schedule.hpp"
#include "tackfree/takeoff/lots.hpp"

#include <functional>
#include <random>
#include <vector>

#include "effort.hpp"
#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

std::size_t below(std::minstd_rand& random, std::size_t count) { return random() % count; }

/// A day of the first five weeks of the plan.
Date any_day(std::minstd_rand& random) {
  return add_days(parse_date("2027-04-06").value(), static_cast<int>(below(random, 35)));
}

/// A job with one to three batches of one to three parts, and hours drawn at random.
Job random_job(std::minstd_rand& random) {
  Job job = testing::sample_job(below(random, 2) == 0 ? "oil_polyurethane" : "shellac");
  job.grid = Minutes(15);
  job.systems[0].steps[0].coats = 1 + static_cast<int>(below(random, 3));
  for (auto& day : job.calendar.weekly) {
    const int begin = 60 * static_cast<int>(6 + below(random, 6));
    day = {{begin, begin + 60 * static_cast<int>(3 + below(random, 8))}};
  }
  if (below(random, 2) == 0) job.calendar.no_power_sanding.clear();
  job.parts[0].quantity = 1 + static_cast<int>(below(random, 3));
  if (below(random, 2) == 0) testing::add_legs(job);
  return job;
}

using Rule = std::function<void(Job&, std::minstd_rand&)>;

/// Rules that only ever take something away from what is allowed.
const std::vector<std::pair<const char*, Rule>> tightenings{
    {"pin",
     [](Job& job, auto& random) {
       job.batches[0].rules.pins.push_back(
           {"finish", 1, std::nullopt, any_day(random), {0, 24 * 60}, 0});
     }},
    {"no coating",
     [](Job& job, auto& random) {
       for (Batch& batch : job.batches) batch.rules.no_coating_on.push_back(any_day(random));
     }},
    {"not before",
     [](Job& job, auto& random) {
       job.batches[0].rules.not_before = job.calendar.zone.instant({any_day(random), 0});
     }},
    {"day off", [](Job& job, auto& random) { job.calendar.days_off.push_back(any_day(random)); }},
    {"busy",
     [](Job& job, auto& random) {
       BusyEvent busy;
       busy.begin = {any_day(random), 600};
       busy.longer = Minutes(180);
       busy.repeats = Recurrence{.every = Recurrence::Every::week, .count = 3};
       job.calendar.busy.push_back(busy);
     }},
    {"quiet hours",
     [](Job& job, auto&) {
       job.calendar.no_power_sanding = {{0, 11 * 60}, {18 * 60, 24 * 60}};
     }},
    {"space",
     [](Job& job, auto&) {
       double most = 0;
       for (std::size_t b = 0; b < job.batches.size(); ++b) {
         double sum = 0;
         for (const Part& part : job.parts)
           if (part.batch == job.batches[b].name)
             sum += part.quantity * covered_by(part.shape).in(square_metres);
         most = std::max(most, sum);
       }
       job.rooms = {{"shed", square_metres(most + 0.01), std::nullopt, 0}};
       for (Batch& batch : job.batches) batch.rules.room = 0;
     }},
};

TEST_CASE("a rule more never makes the proved optimum earlier, a rule less never later") {
  std::minstd_rand random(7);
  int compared = 0, moved = 0;
  for (int round = 0; round < testing::cases(28); ++round) {
    const Job job = random_job(random);
    const auto& tightened = tightenings[static_cast<std::size_t>(round) % tightenings.size()];
    Job more = job;
    tightened.second(more, random);
    const testing::Scheduled with = testing::scheduled(more), without = testing::scheduled(job);
    INFO(round, " ", tightened.first);
    CHECK(broken_rules(more, with.list, with.air, with.schedule).empty());
    CHECK(broken_rules(job, without.list, without.air, without.schedule).empty());
    const auto& proof = without.schedule.proof;
    if (!proof || !proof->earliest_ready) continue;
    REQUIRE(without.schedule.ready_at);
    // What the tighter job reaches, the looser one could reach as well.
    if (with.schedule.ready_at) {
      CHECK(*without.schedule.ready_at <= *with.schedule.ready_at);
      ++compared;
      if (*without.schedule.ready_at < *with.schedule.ready_at) ++moved;
    }
    if (with.schedule.proof)
      CHECK(with.schedule.proof->ready_no_sooner_than >= proof->ready_no_sooner_than - job.grid);
  }
  CHECK(compared > testing::cases(14));
  CHECK(moved > testing::cases(3));
}

TEST_CASE(
    "random shops with every kind of rule at once keep all of them, or say what has no time") {
  std::minstd_rand random(11);
  int whole = 0;
  for (int round = 0; round < testing::cases(14); ++round) {
    Job job = random_job(random);
    for (const auto& [name, add] : tightenings)
      if (below(random, 3) > 0) add(job, random);
    if (below(random, 2) == 0)
      job.batches[0].rules.ready_by = job.calendar.zone.instant({any_day(random), 720});
    for (std::size_t person = 0; person < 1 + below(random, 3); ++person) {
      job.people.push_back({std::string(1, static_cast<char>('A' + person)), job.calendar, 0});
      for (auto& day : job.people.back().hours.weekly)
        if (below(random, 3) == 0) day.clear();
    }
    const testing::Scheduled s = testing::scheduled(job);
    INFO(round);
    const auto broken = broken_rules(job, s.list, s.air, s.schedule);
    CHECK_MESSAGE(broken.empty(), (broken.empty() ? std::string() : broken.front()));
    for (const Unplaced& each : s.schedule.unplaced) {
      CHECK((each.by != HeldBy::previous_step || each.waits_for));
      CHECK((each.by != HeldBy::air || each.gate));
    }
    if (s.schedule.unplaced.empty()) ++whole;
  }
  CHECK((testing::sanitized || whole > 5));
}

}  // namespace
}  // namespace tackfree
