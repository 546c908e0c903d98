#include "tackfree/schedule/make_schedule.hpp"

#include "tackfree/schedule/check_schedule.hpp"

#include <array>
#include <random>

#include "effort.hpp"
#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::instant;
using testing::sample_job;
using testing::Scheduled;
using testing::scheduled;

void check_clean(const Scheduled& s) {
  const auto broken = broken_rules(s.job, s.list, s.air, s.schedule);
  for (const std::string& rule : broken) FAIL_CHECK(rule);
}

TEST_CASE("the sample top is planned whole and breaks no rule") {
  const Scheduled s = scheduled(sample_job());
  CHECK(s.schedule.unplaced.empty());
  CHECK(s.schedule.steps.size() == s.list.operations.size());
  REQUIRE(s.schedule.ready_at);
  check_clean(s);
}

TEST_CASE("in label air a coat keeps the label's hours") {
  Job job = sample_job();
  job.air = ConstantAir{celsius(23), humidity_percent(50)};
  const Scheduled s = scheduled(job);
  const DatedStep* back = s.step("top/finish/coat-1/back/coat");
  REQUIRE(back);
  CHECK(*back->reaches[index_of(Stage::handle)] == back->end() + std::chrono::hours(8));
  CHECK(*back->reaches[index_of(Stage::sand)] == back->end() + std::chrono::hours(12));
  check_clean(s);
}

TEST_CASE("warm air does not beat the label unless the person says so (rule 1)") {
  Job job = sample_job();
  job.air = ConstantAir{celsius(30), humidity_percent(40)};
  const auto wait = [](const Scheduled& s) {
    const DatedStep* coat = s.step("top/finish/coat-1/back/coat");
    return *coat->reaches[index_of(Stage::sand)] - coat->end();
  };
  CHECK(wait(scheduled(job)) == std::chrono::hours(12));
  job.faster_than_label = true;
  CHECK(wait(scheduled(job)) < std::chrono::hours(8));
  check_clean(scheduled(job));
}

TEST_CASE("no coat goes on in a garage that is too cold in all working hours") {
  Job job = sample_job();
  job.air = ConstantAir{celsius(6), humidity_percent(50)};
  const Scheduled s = scheduled(job);
  REQUIRE_FALSE(s.schedule.unplaced.empty());
  const Unplaced& first = s.schedule.unplaced.front();
  CHECK(s.list.operations[first.operation].key == "top/finish/coat-1/back/coat");
  CHECK(first.by == HeldBy::air);
  CHECK(first.gate == Gate::too_cold);
  CHECK_FALSE(s.schedule.ready_at);
  CHECK(s.step("top/finish/bare/both/sand-p120"));  // the rest is still planned
  check_clean(s);
}

TEST_CASE("coats wait for the warm hours and say so") {
  Job job = sample_job();
  // Evenings at 8 C, Saturdays warm enough at noon: only Saturday takes a coat.
  job.air = testing::daily_air("2027-04-05T00:00Z", 24 * 60, 50,
                               [](int hour) { return hour >= 8 && hour < 17 ? 14.0 : 8.0; });
  const Scheduled s = scheduled(job);
  check_clean(s);
  bool blamed = false;
  for (const DatedStep& step : s.schedule.steps) {
    if (s.list.operations[step.operation].kind != OperationKind::coat) continue;
    CHECK(weekday_index(job.calendar.zone.local(step.begin()).on) == 5);
    for (const Held& held : step.held)
      blamed = blamed || (held.by == HeldBy::air && held.gate == Gate::too_cold);
  }
  CHECK(blamed);
}

TEST_CASE("power sanding keeps the quiet hours, sanding by hand need not") {
  Job job = sample_job();
  for (auto& day : job.calendar.weekly) day = {{20 * 60, 23 * 60}};
  const Scheduled quiet = scheduled(job);
  REQUIRE_FALSE(quiet.schedule.unplaced.empty());
  CHECK(quiet.schedule.unplaced.front().by == HeldBy::quiet_hours);
  job.data.labour.bare_tool = SandingTool::hand;
  const Scheduled by_hand = scheduled(job);
  CHECK(by_hand.schedule.unplaced.empty());
  check_clean(by_hand);
}

TEST_CASE("a coat that no window can hold is kept out by the hours") {
  Job job = sample_job();
  for (auto& day : job.calendar.weekly) day = {{18 * 60, 18 * 60 + 30}};
  const Scheduled s = scheduled(job);
  REQUIRE_FALSE(s.schedule.unplaced.empty());
  const Unplaced& first = s.schedule.unplaced.front();
  CHECK(first.by == HeldBy::calendar);
  CHECK(s.list.operations[first.operation].coating);
}

TEST_CASE("two batches share a session, and dust and wet boards are kept apart") {
  Job job = sample_job();
  testing::add_legs(job);
  const Scheduled s = scheduled(job);
  CHECK(s.schedule.unplaced.empty());
  check_clean(s);
  bool shared = false;
  for (const Session& session : s.schedule.sessions) shared = shared || session.steps.size() > 1;
  CHECK(shared);
}

TEST_CASE("a plan over the night when clocks change keeps local working hours") {
  Job job = sample_job();
  job.calendar.zone = Zone::named("America/New_York").value();
  check_clean(scheduled(job, "2026-10-29T12:00Z"));
  check_clean(scheduled(job, "2027-03-11T12:00Z"));
}

TEST_CASE("every class is planned whole and clean, one side or two") {
  for (const char* class_key : {"oil_polyurethane", "waterborne_polyurethane", "shellac"})
    for (const Sides sides : {Sides::turn_over, Sides::on_points}) {
      CAPTURE(class_key);
      Job job = sample_job(class_key);
      job.batches[0].sides = sides;
      const Scheduled s = scheduled(job);
      CHECK(s.schedule.unplaced.empty());
      check_clean(s);
    }
}

TEST_CASE("steps that rest on repeated air say so") {
  Job job = sample_job();
  job.air = testing::daily_air("2027-04-05T00:00Z", 24 * 3, 50, [](int) { return 18.0; });
  const Scheduled s = scheduled(job);
  REQUIRE(s.air.typical_from());
  for (const DatedStep& step : s.schedule.steps) {
    const bool coat = s.list.operations[step.operation].kind == OperationKind::coat;
    if (coat && step.end() > *s.air.typical_from()) CHECK(step.on_typical_air);
    if (step.end() < instant("2027-04-07T00:00Z") && !coat) CHECK_FALSE(step.on_typical_air);
  }
  CHECK(s.schedule.steps.back().on_typical_air);
}

TEST_CASE("small jobs are proved: none ready sooner, none as soon in fewer sessions") {
  Job job = sample_job();
  testing::add_legs(job);
  const Scheduled s = scheduled(job);
  REQUIRE(s.schedule.proof);
  CHECK(s.schedule.proof->earliest_ready);
  CHECK(s.schedule.proof->fewest_sessions);
  // The bound is on the planning grid, the ready minute on the clock.
  CHECK(s.schedule.proof->ready_no_sooner_than >= *s.schedule.ready_at);
  CHECK(s.schedule.proof->ready_no_sooner_than - *s.schedule.ready_at < job.grid);
}

TEST_CASE("adding work never makes a proved schedule ready sooner, adding hours never later") {
  const Instant alone = *scheduled(sample_job()).schedule.ready_at;
  Job more = sample_job();
  testing::add_legs(more);
  const Instant both = *scheduled(more).schedule.ready_at;
  CHECK(both >= alone);
  more.calendar.weekly[6] = {{9 * 60, 17 * 60}};
  CHECK(*scheduled(more).schedule.ready_at <= both);
}

TEST_CASE("a schedule that leaves something out is not called proved") {
  Job job = sample_job();
  job.air = ConstantAir{celsius(6), humidity_percent(50)};
  CHECK_FALSE(scheduled(job).schedule.proof);
}

TEST_CASE("the same job gives the same dates") {
  const Scheduled a = scheduled(sample_job()), b = scheduled(sample_job());
  REQUIRE(a.schedule.steps.size() == b.schedule.steps.size());
  for (std::size_t i = 0; i < a.schedule.steps.size(); ++i)
    CHECK(a.schedule.steps[i].pieces == b.schedule.steps[i].pieces);
}

TEST_CASE("random jobs in random weather break no rule") {
  std::mt19937 random(20270405);
  const auto pick = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  int whole = 0;
  for (int i = 0; i < testing::cases(40); ++i) {
    Job job = sample_job(std::array{"oil_polyurethane", "waterborne_polyurethane",
                                    "shellac"}[static_cast<std::size_t>(pick(3))]);
    job.horizon = days(28);
    if (pick(2) == 0) testing::add_legs(job);
    job.batches[0].sides = pick(2) == 0 ? Sides::on_points : Sides::turn_over;
    job.systems[0].steps[0].coats = 1 + pick(4);
    const double mean = 8 + pick(12), swing = pick(8);
    job.air = testing::daily_air("2027-04-05T00:00Z", 24 * 30, 45 + pick(40), [&](int hour) {
      return mean + swing * (hour > 8 && hour < 19 ? 1 : -1) + pick(3);
    });
    const Scheduled s = scheduled(job);
    CAPTURE(i);
    check_clean(s);
    if (s.schedule.unplaced.empty()) ++whole;
  }
  CHECK(whole >= testing::cases(10));
}

TEST_CASE("lacquer gets three coats a day at most, and the plan says what held the fourth") {
  Job job = sample_job("nitrocellulose_lacquer");
  job.systems[0].steps[0].coats = 5;
  job.batches[0].sides = Sides::on_points;
  for (auto& day : job.calendar.weekly) day = {{6 * 60, 24 * 60}};
  const Scheduled s = scheduled(job, "2027-04-05T00:00Z");
  check_clean(s);
  const DatedStep* third = s.step("top/finish/coat-3/both/coat");
  const DatedStep* fourth = s.step("top/finish/coat-4/both/coat");
  const Zone utc = Zone::utc();
  CHECK(utc.local(third->begin()).on ==
        utc.local(s.step("top/finish/coat-1/both/coat")->begin()).on);
  CHECK(utc.local(fourth->begin()).on > utc.local(third->begin()).on);
  CHECK(std::any_of(fourth->held.begin(), fourth->held.end(),
                    [](const Held& held) { return held.by == HeldBy::coats_a_day; }));
}

/// Coats that melt together, unsanded, at label conditions, with all hours free.
Job melting(const std::string& class_key, int coats) {
  Job job = sample_job(class_key);
  job.air = ConstantAir{celsius(23), humidity_percent(50)};
  job.batches[0].sides = Sides::on_points;
  job.coatings[0].needs_sanding_between = false;
  job.systems[0].steps[0].coats = coats;
  for (auto& day : job.calendar.weekly) day = {{0, 24 * 60}};
  job.calendar.no_power_sanding.clear();
  return job;
}

TEST_CASE(
    "the wait for the next coat grows with the coats of the day that melt together (rule 4)") {
  const Scheduled s = scheduled(melting("shellac", 4), "2027-04-05T00:00Z");
  check_clean(s);
  const auto coat = [&](int number) {
    const DatedStep* step = s.step("top/finish/coat-" + std::to_string(number) + "/both/coat");
    REQUIRE(step);
    return step;
  };
  const auto after_first = [&](int number) { return coat(number)->begin() - coat(1)->end(); };
  CHECK(after_first(2) == Minutes(180));
  CHECK(after_first(3) == Minutes(510));  // 3 h x 2 ^ 1.5 = 509.1 min, on the grid
  // On the next day the first two have had their time: the fourth waits for no more than its day.
  CHECK(after_first(4) > Minutes(12 * 60));
  bool told = false;
  for (const Held& held : coat(3)->held) told = told || held.films == 2;
  CHECK(told);
}

TEST_CASE("a thick film of coats that melt together bears use later (rule 4)") {
  const auto light_use = [](double normal_film_um) {
    Job job = melting("nitrocellulose_lacquer", 5);
    job.coatings[0].film_aim[1].value = micrometres(normal_film_um);
    const Scheduled s = scheduled(job, "2027-04-05T00:00Z");
    const DatedStep* last = s.step("top/finish/coat-5/both/coat");
    REQUIRE(last);
    return (*last->reaches[index_of(Stage::light_use)] - last->end()) / Minutes(1);
  };
  // 100 um wet at 20 % solids: 10 + 4 x 20 = 90 um count, unsanded; 24 h x (90 / 60) ^ 2.
  CHECK(light_use(90) == 24 * 60);
  CHECK(light_use(60) == doctest::Approx(24 * 60 * 2.25).epsilon(0.001));
}

TEST_CASE("oil is wiped off ten minutes after it is on, and dries from then") {
  Job job = sample_job("drying_oil");
  job.systems[0].steps[0].coats = 2;
  job.air = ConstantAir{celsius(23), humidity_percent(50)};
  job.batches[0].sides = Sides::on_points;
  const Scheduled s = scheduled(job);
  check_clean(s);
  const DatedStep* coat = s.step("top/finish/coat-1/both/coat");
  const DatedStep* wipe = s.step("top/finish/coat-1/both/wipe-off");
  REQUIRE(coat);
  REQUIRE(wipe);
  CHECK(wipe->begin() == coat->end() + Minutes(10));
  CHECK(coat->dries_from == wipe->end());
  CHECK(*coat->reaches[index_of(Stage::recoat)] == wipe->end() + std::chrono::hours(24));
  for (const Session& session : s.schedule.sessions) CHECK(session.clean_up.begin != coat->end());
}

TEST_CASE("waterborne over oil stain waits longer by the clock in a cold room (rule 5)") {
  Job job = sample_job("waterborne_polyurethane");
  job.coatings.push_back(testing::named(testing::class_of(job.data, "oil_stain"), "stain"));
  job.systems[0].steps.insert(job.systems[0].steps.begin(),
                              {"stain", "stain", "wipe", 1, std::nullopt, 0});
  job.batches[0].sides = Sides::on_points;
  for (auto& day : job.calendar.weekly) day = {{0, 24 * 60}};
  const auto wait = [&](double degrees) {
    job.air = ConstantAir{celsius(degrees), humidity_percent(50)};
    const Scheduled s = scheduled(job);
    check_clean(s);
    return s.step("top/finish/coat-1/both/coat")->begin() -
           *s.step("top/stain/coat-1/both/coat")->dries_from;
  };
  CHECK(wait(23) >= std::chrono::hours(72));
  CHECK(wait(23) < std::chrono::hours(73));
  CHECK(wait(15) > std::chrono::hours(5 * 24));  // 72 h / 0.53787
  CHECK(wait(15) < std::chrono::hours(6 * 24));
}

}  // namespace
}  // namespace tackfree
