#include "tackfree/plan/remedies.hpp"

#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/what_if.hpp"

#include <algorithm>
#include <string>

#include "plan/planned_log.hpp"

namespace tackfree {
namespace {

const char* const remedied_now = "2027-04-05T17:00Z";

struct Remedied {
  Job job;
  Plan plan;
  std::vector<Remedy> found;
};

Remedied remedied(Job job, std::int64_t most = most_effort) {
  Plan plan = testing::planned_again(job, remedied_now);
  solver::Effort effort{most};
  auto found = remedies(plan, job, testing::instant(remedied_now), effort);
  return {std::move(job), std::move(plan), std::move(found)};
}

Job in_air(double degrees, double humidity, const std::string& class_key = "oil_polyurethane") {
  Job job = testing::sample_job(class_key);
  job.air = ConstantAir{celsius(degrees), humidity_percent(humidity)};
  return job;
}

const ConditionedAir* air_of(const Remedy& remedy) {
  return std::get_if<ConditionedAir>(&remedy.change);
}

bool gives_time(const Remedied& all, const Change& change) {
  solver::Effort effort;
  const auto planned = what_if(all.job, change, testing::instant(remedied_now), effort);
  const std::size_t step = all.found.front().operation;
  return planned && planned->begins.contains(all.plan.list.operations.at(step).key);
}

/// One degree, or five points of humidity, less.
ConditionedAir less(ConditionedAir air) {
  if (air.warmer > TemperatureDifference())
    air.warmer = air.warmer - kelvins(1);
  else
    air.drier = air.drier - humidity_percent(5);
  return air;
}

TEST_CASE("a room too cold goes with the least warmth that does, for one night or throughout") {
  const Remedied all = remedied(in_air(6, 50));
  REQUIRE(all.found.size() == 2);
  const ConditionedAir night = *air_of(all.found[0]), throughout = *air_of(all.found[1]);
  // The varnish goes on from 10 C, a limit that the air may touch.
  CHECK(throughout.warmer.in(kelvins) == doctest::Approx(4));
  CHECK_FALSE(throughout.time);
  CHECK(all.found[1].ready_at);
  CHECK(night.warmer.in(kelvins) == doctest::Approx(4));
  REQUIRE(night.time);
  CHECK(night.time->begin < all.found[0].begins);
  CHECK(night.time->length() < Minutes(48 * 60));
  CHECK_FALSE(all.found[0].ready_at);  // the next coat needs a night of its own
  for (const Remedy& each : all.found) {
    CHECK(gives_time(all, each.change));
    CHECK_FALSE(gives_time(all, less(*air_of(each))));
  }
}

TEST_CASE("a room too damp goes drier or warmer") {
  const Remedied all = remedied(in_air(18, 97));
  const auto drier = std::ranges::find_if(all.found, [](const Remedy& each) {
    return air_of(each) != nullptr && air_of(each)->drier > Humidity();
  });
  REQUIRE(drier != all.found.end());
  CHECK(gives_time(all, drier->change));
  CHECK_FALSE(gives_time(all, less(*air_of(*drier))));
  CHECK(std::ranges::any_of(all.found, [](const Remedy& each) {
    return air_of(each) != nullptr && air_of(each)->warmer > TemperatureDifference();
  }));
}

TEST_CASE("a step longer than any evening goes with the least longer evening") {
  Job job = testing::sample_job();
  for (auto& day : job.calendar.weekly) day = {{18 * 60, 18 * 60 + 40}};
  const Remedied all = remedied(std::move(job));
  REQUIRE_FALSE(all.plan.schedule.unplaced.empty());
  REQUIRE(all.found.size() == 1);
  const auto& hours = std::get<AddedHours>(all.found[0].change);
  REQUIRE(hours.windows.size() == 1);
  CHECK(hours.windows[0].begin == 18 * 60 + 40);
  CHECK(gives_time(all, hours));
  AddedHours shorter = hours;
  shorter.windows[0].end -= 30;
  if (shorter.windows[0].end > shorter.windows[0].begin) CHECK_FALSE(gives_time(all, shorter));
}

TEST_CASE("no remedy warms by flame or glow, airs less, or is tried where nothing is left to try") {
  int warmed = 0;
  for (const std::string key :
       {"oil_polyurethane", "waterborne_polyurethane", "nitrocellulose_lacquer", "shellac"})
    for (const auto& [degrees, humidity] : {std::pair{2.0, 70.0}, {7.0, 95.0}, {16.0, 98.0}}) {
      Job job = in_air(degrees, humidity, key);
      job.room.ignition_sources = {"water heater"};
      job.room.airing = AiringHabit{Opening::ajar, Opening::open, hours(2)};
      const Remedied all = remedied(std::move(job));
      for (const Remedy& each : all.found) {
        const Job changed = with_change(all.job, each.change);
        CHECK(changed.room.airing == all.job.room.airing);
        CHECK(changed.room.ignition_sources == all.job.room.ignition_sources);
        CHECK(heater_may_light(changed) == heater_may_light(all.job));
        const ConditionedAir* air = air_of(each);
        if (air == nullptr || air->warmer <= TemperatureDifference()) continue;
        CHECK(air->heater == HeaterKind::sealed);
        ++warmed;
      }
    }
  CHECK(warmed > 4);
  CHECK(remedied(in_air(6, 50), 1).found.empty());
  CHECK(remedied(in_air(20, 50)).found.empty());
}

}  // namespace
}  // namespace tackfree
