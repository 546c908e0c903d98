#include "tackfree/fumes/ignition.hpp"

#include <algorithm>

#include "fumes/judged_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

Instant hour(int h) { return Instant{std::chrono::hours(h)}; }

/// One evening's session of a coating from 18:00, its coat to 19:00, cleaned up by 19:15, in UTC.
struct Evening {
  Job job;
  OperationList list;
  Schedule schedule;

  Evening() {
    job.data.solvents = {spirits()};
    job.data.solvents[0].flash_point = sourced(celsius(39), Origin::published);
    Coating varnish;
    varnish.flash_point = sourced(celsius(40), Origin::label);
    varnish.cleaner_mix = {{"mineral_spirits", sourced(percent(100), Origin::assumed)}};
    job.coatings = {varnish};
    Operation coat;
    coat.coating = 0;
    list.operations = {coat};
    DatedStep step;
    step.pieces = {{hour(18) + Minutes(10), hour(19)}};
    step.session = 0;
    schedule.steps = {step};
    Session session;
    session.set_up = {hour(18), hour(18) + Minutes(10)};
    session.clean_up = {hour(19), hour(19) + Minutes(15)};
    session.steps = {0};
    schedule.sessions = {session};
  }

  void heat(std::optional<HeaterKind> kind, std::vector<DayWindow> when) {
    AirMix mix;
    mix.indoors = Indoors{};
    mix.indoors->heating = Heating{};
    mix.indoors->heating->kind = kind;
    mix.indoors->heating->hours = std::move(when);
    job.air = mix;
  }

  RoomJudgement judged() const {
    RoomJudgement room;
    StretchJudgement stretch;
    stretch.steps = {0};
    stretch.airing = {{{hour(18), hour(22)}, Opening::ajar}};
    stretch.under_tenth_at = hour(23);
    room.stretches = {stretch};
    return room;
  }

  std::vector<FlammableTime> times() const {
    return flammable_times(job, list, schedule, judged());
  }
};

}  // namespace

TEST_CASE("vapour that burns comes from the coating, from its thinner or from the cleaner") {
  Evening evening;
  CHECK(gives_flammable_vapour(evening.job, evening.job.coatings[0], false));
  Coating raw_oil;
  raw_oil.flash_point = sourced(celsius(200), Origin::practice);
  raw_oil.thinner_mix = {{"mineral_spirits", sourced(percent(100), Origin::assumed)}};
  CHECK_FALSE(gives_flammable_vapour(evening.job, raw_oil, false));
  CHECK(gives_flammable_vapour(evening.job, raw_oil, true));
  raw_oil.cleaner_mix = raw_oil.thinner_mix;
  CHECK(gives_flammable_vapour(evening.job, raw_oil, false));
  CHECK_FALSE(gives_flammable_vapour(evening.job, Coating{}, true));  // waterborne
  // Source: International Fire Code 2018, chapter 2: class III A is from 60 C to below 93 C.
  Coating oil;
  oil.flash_point = sourced(celsius(92.9), Origin::label);
  CHECK(gives_flammable_vapour(evening.job, oil, false));
  oil.flash_point = sourced(celsius(93), Origin::label);
  CHECK_FALSE(gives_flammable_vapour(evening.job, oil, false));
}

TEST_CASE("all is off from the opening of the tin until airing has ended and the smell is gone") {
  Evening evening;
  const auto times = evening.times();
  REQUIRE(times.size() == 1);
  CHECK(times[0].time.begin == hour(18));
  CHECK(times[0].time.end == hour(23));
  const auto unjudged = flammable_times(evening.job, evening.list, evening.schedule, std::nullopt);
  REQUIRE(unjudged.size() == 1);
  CHECK(unjudged[0].time.end == hour(19) + Minutes(15) + one_day);
  evening.job.coatings[0] = Coating{};
  CHECK(evening.times().empty());
}

TEST_CASE("a heater with a flame that runs then is named with the hours, a sealed one is not") {
  Evening evening;
  evening.heat(HeaterKind::flame, {{6 * 60, 9 * 60}, {20 * 60, 24 * 60}});
  const auto clash = heater_clash(evening.job, evening.times());
  REQUIRE(clash);
  CHECK(clash->kind == HeaterKind::flame);
  REQUIRE(clash->hours.size() == 1);
  CHECK(clash->hours[0].begin == hour(20));
  CHECK(clash->hours[0].end == hour(23));
  evening.heat(std::nullopt, {{20 * 60, 24 * 60}});
  CHECK(heater_clash(evening.job, evening.times()));
  evening.heat(HeaterKind::sealed, {{20 * 60, 24 * 60}});
  CHECK_FALSE(heater_clash(evening.job, evening.times()));
  evening.heat(HeaterKind::glowing, {{6 * 60, 9 * 60}});
  CHECK_FALSE(heater_clash(evening.job, evening.times()));
}

TEST_CASE("what the job lists can light vapour, and so can its heater unless it is sealed") {
  Evening evening;
  CHECK_FALSE(has_ignition_source(evening.job));
  evening.heat(HeaterKind::sealed, {{6 * 60, 9 * 60}});
  CHECK_FALSE(heater_may_light(evening.job));
  CHECK_FALSE(has_ignition_source(evening.job));
  evening.heat(HeaterKind::glowing, {{6 * 60, 9 * 60}});
  CHECK(heater_may_light(evening.job));
  CHECK(has_ignition_source(evening.job));
  Evening listed;
  listed.job.room.ignition_sources = {"freezer"};
  CHECK_FALSE(heater_may_light(listed.job));
  CHECK(has_ignition_source(listed.job));
}

TEST_CASE("what warms the room for a time may light vapour in that time, unless it is sealed") {
  Evening evening;
  const Interval warm{hour(17), hour(20)};
  const auto warmed_by = [&](std::optional<HeaterKind> kind) {
    AirMix mix;
    mix.conditioned = {{.time = warm, .warmer = kelvins(5), .heater = kind}};
    evening.job.air = mix;
    return heater_clash(evening.job, {{0, {hour(18), hour(23)}}});
  };
  const auto clash = warmed_by(HeaterKind::glowing);
  REQUIRE(clash);
  CHECK(clash->kind == HeaterKind::glowing);
  CHECK(clash->hours == std::vector<Interval>{{hour(18), hour(20)}});
  CHECK(heater_may_light(evening.job));
  CHECK(warmed_by(std::nullopt));
  CHECK_FALSE(warmed_by(HeaterKind::sealed));
  CHECK_FALSE(heater_may_light(evening.job));
  AirMix dried;
  dried.conditioned = {{.drier = humidity_percent(20)}};
  evening.job.air = dried;
  CHECK_FALSE(heater_may_light(evening.job));
}
