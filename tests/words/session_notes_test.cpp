#include "tackfree/words/session_notes.hpp"

#include <algorithm>
#include <string>

#include "judged_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

std::vector<std::string> notes(const Plan& plan, std::size_t session) {
  return session_notes(
      plan, StepWords(plan),
      work_sessions(plan.list, plan.schedule, {.who = {}, .with_done = true}).at(session));
}

bool has(const std::vector<std::string>& lines, const std::string& line) {
  return std::ranges::find(lines, line) != lines.end();
}

TEST_CASE("what can hurt stands first, then the tasks with their hours and what to pour") {
  Plan plan = judged_plan();
  plan.job.coatings[0].words.cautions = {"oily_rags"};
  const auto lines = notes(plan, 1);
  CHECK(lines.front() == "WARNING: Rags heat themselves. Spread them flat outside.");
  CHECK(has(lines, "9:00 am seat: sand bare wood, P120 (15 min)"));
  CHECK(has(lines,
            "10:10 am seat: coat 1 of 2, back (30 min). Pour 3.7 fl oz (110 ml): 3.4 varnish + 0.3 "
            "mineral spirits."));
  CHECK(lines.back() == plan.job.data.texts.deference);
}

TEST_CASE("a session is told what is dry for it, with the day where it is another one") {
  Plan plan = small_plan();
  CHECK(has(notes(plan, 2), "Dry to handle from Sat Apr 10, 11:40 pm: seat: coat 1 of 2, back."));
  plan.schedule.steps[3].held[0].until = at("2027-04-11T12:40:00Z");
  CHECK(has(notes(plan, 2), "Dry to handle from 8:40 am: seat: coat 1 of 2, back."));
  CHECK(has(notes(plan, 2), "Rests on typical air: the hours may move."));
}

TEST_CASE("closing up at night is told in the notes, by day it is an entry of its own") {
  Plan plan = judged_plan();
  plan.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(12)};
  plan.room->proposed.reset();
  CHECK(has(notes(plan, 1), "Close up at Sat Apr 10, 11:10 pm: no alarm rings for it at night."));
  plan.job.room.airing->after_for = hours(3);
  for (const std::string& line : notes(plan, 1)) CHECK_FALSE(line.starts_with("Close up"));
}

TEST_CASE("work that is done says so, and warns of nothing more") {
  Plan plan = judged_plan();
  plan.job.coatings[0].words.cautions = {"oily_rags"};
  for (const std::size_t step : {1U, 2U})
    plan.list.operations[plan.schedule.steps[step].operation].done =
        Done{.time = plan.schedule.steps[step].pieces[0]};
  const auto lines = notes(plan, 1);
  CHECK(has(lines, "10:10 am seat: coat 1 of 2, back (done)"));
  for (const std::string& line : lines) CHECK_FALSE(line.starts_with("WARNING"));
}

}  // namespace
}  // namespace tackfree
