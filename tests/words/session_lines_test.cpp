#include "tackfree/words/session_lines.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// A step of one piece, `minutes_in` after 9 am on 12 April, half an hour long.
void add_step(Plan& plan, const Operation& op, int minutes_in) {
  const Instant begin = at("2027-04-12T13:00:00Z") + Minutes(minutes_in);
  plan.list.operations.push_back(op);
  plan.schedule.steps.push_back(
      {.operation = plan.list.operations.size() - 1, .pieces = {{begin, begin + Minutes(30)}}});
}

Operation sanding(std::size_t batch, int grit) {
  Operation op = small_operation(OperationKind::sand_between, "x", batch, 2);
  op.grit = Grit{grit};
  return op;
}

std::vector<std::string> titles(const SessionLines& session) {
  std::vector<std::string> all;
  for (const WorkLine& line : session.lines) all.push_back(line.what);
  return all;
}

}  // namespace

TEST_CASE("work with short breaks is one session, set-up and clean-up with it") {
  const Plan plan = small_plan();
  const auto all = session_lines(plan, StepWords(plan));
  REQUIRE(all.size() == 3);
  CHECK(all[1].time == Interval{at("2027-04-10T13:00:00Z"), at("2027-04-10T15:30:00Z")});
  CHECK(all[1].work == Minutes(105));
  CHECK(session_heading(all[1], Figures(plan.job)) ==
        "Sat Apr 10, 9:00 to 11:30 am: 1 h 45 min of work");
  CHECK(session_heading(all[2], Figures(plan.job)) ==
        "Sun Apr 11, 9:00 to 9:10 am: 10 min of work; typical air, hours may move");
}

TEST_CASE("a break over an hour ends a session") {
  Plan plan = small_plan();
  add_step(plan, sanding(0, 240), 0);
  add_step(plan, sanding(1, 240), 90);
  add_step(plan, small_operation(OperationKind::turn_over, "t", 1, 1), 181);
  const auto all = session_lines(plan, StepWords(plan));
  REQUIRE(all.size() == 5);
  CHECK(all[3].lines.size() == 2);
  CHECK(all[4].lines.size() == 1);
}

TEST_CASE("the grits of one piece are one line, those of another piece another") {
  Plan plan = small_plan();
  add_step(plan, sanding(0, 120), 0);
  add_step(plan, sanding(0, 150), 30);
  add_step(plan, sanding(1, 120), 60);
  add_step(plan, sanding(0, 220), 90);
  const SessionLines last = session_lines(plan, StepWords(plan)).back();
  CHECK(titles(last) == std::vector<std::string>{
                            "seat: sand before coat 2, P120 to P220, in turns with other pieces",
                            "legs: sand before coat 2, P120, in turns with other pieces"});
  CHECK(last.lines[0].work == Minutes(90));
}

TEST_CASE("a coat stands with its dusting off, in the order of the work") {
  Plan plan = small_plan();
  add_step(plan, small_operation(OperationKind::dust_off, "d", 1, 2), 0);
  Operation coat = small_coat("c", 1, 2, Side::both);
  coat.right_after.emplace();
  add_step(plan, coat, 30);
  const SessionLines last = session_lines(plan, StepWords(plan)).back();
  REQUIRE(last.lines.size() == 1);
  CHECK(last.lines[0].what.starts_with("legs: dust off, then coat 2 of 2, both sides, at"));
  CHECK(last.lines[0].steps.size() == 2);
}

TEST_CASE("with several people each one's work stands together") {
  Plan plan = small_plan();
  plan.job.people.resize(2);
  plan.job.people[0].name = "Ada";
  plan.job.people[1].name = "Ben";
  for (int i = 0; i < 4; ++i) {
    add_step(plan, sanding(0, 100 + 40 * i), 30 * i);
    plan.schedule.steps.back().by.assign(1, static_cast<std::size_t>(1 - i % 2));
  }
  const SessionLines last = session_lines(plan, StepWords(plan)).back();
  REQUIRE(last.lines.size() == 2);
  CHECK(last.people == 2);
  CHECK(last.lines[0].who == 0);
  CHECK(last.lines[1].who == 1);
  CHECK(session_summary(last, plan, StepWords(plan), 200) ==
        "Sand before coat 2, P140 to P220: seat (Ada). Sand before coat 2, P100 to P180: seat "
        "(Ben).");
}

TEST_CASE("a summary has each coat before other work, and counts what does not fit") {
  const Plan plan = small_plan();
  const SessionLines session = session_lines(plan, StepWords(plan)).at(1);
  const StepWords words(plan);
  CHECK(session_summary(session, plan, words, 200) ==
        "Sand bare wood, P120: seat. Coat 1 of 2: seat (back); legs.");
  CHECK(session_summary(session, plan, words, 40) ==
        "Coat 1 of 2: seat (back); legs. And 1 more job.");
}

TEST_CASE("airing stands in the session that it begins in") {
  Plan plan = judged_plan();
  plan.job.room.airing = plan.room->habit;
  const auto all = session_lines(plan, StepWords(plan));
  CHECK(all[0].airing.empty());
  REQUIRE(all[1].airing.size() == 1);
  REQUIRE(all[1].better_airing.size() == 1);
  CHECK(all[1].better_airing[0].time.end == all[1].airing[0].time.end + Minutes(120));
}

TEST_CASE("what must be off stands at the set-up, oily rags at the clean-up") {
  Plan plan = small_plan();
  plan.job.coatings[0].dries_by_oxidation = true;
  plan.job.room.ignition_sources = {"water heater"};
  plan.flammable = {{1, {at("2027-04-10T14:00:00Z"), at("2027-04-11T14:00:00Z")}}};
  const SessionLines session = session_lines(plan, StepWords(plan)).at(1);
  const auto warnings = warnings_of(session, plan);
  REQUIRE(warnings.size() == 2);
  CHECK(holds(session.lines.at(warnings[0].line).what, "set up"));
  CHECK(
      warnings[0].warning.text.starts_with("Before you open the tin, turn off the water heater."));
  CHECK(session.lines.at(warnings[1].line).session != nullptr);
  CHECK(warnings[1].warning.key == "oily_rags");
}

TEST_CASE("a danger of a coating stands at the first coat of its tin, and at no other work") {
  Plan plan = small_plan();
  plan.job.coatings[0].words.cautions = {"isocyanates"};
  plan.cautions[0].text.key = "isocyanates";
  const auto all = session_lines(plan, StepWords(plan));
  CHECK(warnings_of(all[0], plan).empty());
  REQUIRE(warnings_of(all[1], plan).size() == 1);
  CHECK(warnings_of(all[1], plan)[0].warning.key == "isocyanates");
}
