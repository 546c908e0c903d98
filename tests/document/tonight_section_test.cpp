#include "tackfree/document/tonight_section.hpp"

#include "tackfree/plan/remedies.hpp"
#include "tackfree/text/screens.hpp"

#include <algorithm>
#include <sstream>

#include "plan/planned_log.hpp"

namespace tackfree {
namespace {

using namespace testing;

std::string screen(Job job, const char* now) {
  const Plan plan = planned_again(std::move(job), now);
  return tonight_text(plan, tonight(plan));
}

bool has(const std::string& text, std::string_view what) {
  return text.find(what) != std::string::npos;
}

TEST_CASE("an evening is one screen of 25 lines and 80 columns") {
  for (const std::string& text :
       {screen(logged_job({}), "2027-04-05T18:00Z"),
        screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z")}), "2027-04-06T19:10Z"),
        screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z"),
                           thumb(2, back_1, "2027-04-07T18:00Z", false)}),
               "2027-04-07T18:05Z")}) {
    CAPTURE(text);
    CHECK(std::count(text.begin(), text.end(), '\n') <= 26);
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) CHECK(line.size() <= 80 + 10);
  }
}

TEST_CASE("it says what to do, and defers to the label") {
  const std::string text = screen(logged_job({}), "2027-04-05T18:00Z");
  CHECK(has(text, "Do     now: "));
  CHECK(has(text, "sand bare wood"));
  CHECK(has(text, "label"));
}

TEST_CASE("a wet coat has its share and its hour, and sanding is forbidden beside it") {
  const std::string text =
      screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z")}), "2027-04-06T19:10Z");
  CHECK(has(text, "of the way to dry to handle."));
  CHECK(has(text, "Don't  sand or sweep in the room before "));
  CHECK(has(text, "Rags   out since 19:00: oily rags, cloths and sanding dust heat themselves"));
  CHECK(has(text, "Spread them flat outdoors to dry"));
  CHECK(has(text, "tackfree log rags sample.json"));
}

TEST_CASE("a failed test is said, and air that is not fit forbids a coat") {
  LogEntry cold = entry(3, LogKind::air, "", "2027-04-07T18:04Z");
  cold.temperature = celsius(3);
  const std::string text = screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z"),
                                              thumb(2, back_1, "2027-04-07T18:00Z", false), cold}),
                                  "2027-04-07T18:05Z");
  CHECK(has(text, "it failed its test"));
  CHECK(has(text, "as read"));
  // The coat must wait for days: whether the air would be fit now says nothing.
  CHECK_FALSE(has(text, "Air    "));
  cold.at = cold.written_at = instant("2027-04-06T19:00Z");
  const std::string due = screen(logged_job({cold}), "2027-04-06T19:00Z");
  CHECK(has(due, "Don't  coat with finish in this air: too cold"));
}

TEST_CASE("every rule against a coat is told, and how old the reading is") {
  LogEntry cold = entry(1, LogKind::air, "", "2027-04-07T17:50Z");
  cold.temperature = celsius(3);
  cold.humidity = humidity_percent(92);
  const std::string text = screen(logged_job({cold}), "2027-04-07T18:05Z");
  CAPTURE(text);
  CHECK(has(text, "by your reading 15 min\nago"));
  CHECK(has(text, "Don't  coat with finish in this air: too cold to coat"));
  CHECK(has(text, "too damp to coat"));
  CHECK(has(text, "too near the dew"));
  CHECK(has(text, "It is fit again"));
  CHECK(has(screen(logged_job({cold}), "2027-04-07T23:05Z"), "as you gave it"));
}

TEST_CASE("a day without work says so as one would at that hour, and what is next and why") {
  // On the Wednesday the first coat dries; the next hours are at six in the evening.
  const std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T21:20Z")};
  const auto at = [&](const char* now) { return screen(logged_job(log), now); };
  const std::string late = at("2027-04-06T21:30Z");
  CHECK(has(late, "Do     nothing more tonight. Next, tomorrow at 18:00, in 21 h: turn over; "));
  const std::string small_hours = at("2027-04-07T01:00Z");
  CHECK(has(small_hours, "Do     nothing before 18:00, in 17 h; then"));
  const std::string sunday = at("2027-04-11T09:00Z");
  CHECK(has(sunday, "Do     nothing today. Next, tomorrow at 18:00, in 33 h: turn over; "));
  CHECK(has(at("2027-04-11T19:00Z"), "Do     nothing tonight. Next, tomorrow at 18:00"));
}

TEST_CASE(
    "a coat that is not dry to handle is not to be moved, one that waits for sanding let be") {
  const std::string wet =
      screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z")}), "2027-04-06T19:10Z");
  CHECK(has(wet, "Don't  turn or move top before "));
  const std::string both = screen(
      logged_job({coat(1, back_1, "2027-04-06T19:00Z"), coat(2, show_1, "2027-04-07T19:00Z")}),
      "2027-04-07T19:10Z");
  CHECK(has(both, "Don't  sand or coat top before "));
}

/// Coats and hardware of the sample job as they are planned.
std::vector<LogEntry> all_done(Instant& last) {
  std::vector<LogEntry> log;
  int id = 0;
  const Plan whole = planned_again(sample_job(), "2027-04-05T17:00Z");
  for (const DatedStep& step : whole.schedule.steps) {
    const Operation& op = whole.list.operations[step.operation];
    const bool coats = op.kind == OperationKind::coat;
    if (coats || op.kind == OperationKind::fit_hardware)
      log.push_back(
          entry(++id, coats ? LogKind::coat : LogKind::done, op.key, iso_utc(step.end()).c_str()));
    last = step.end();
  }
  return log;
}

TEST_CASE("when all is done it says so, when the piece may be used, loaded and washed") {
  Instant last;
  const std::vector<LogEntry> log = all_done(last);
  const std::string text = screen(logged_job(log), iso_utc(last + Minutes(5)).c_str());
  CAPTURE(text);
  CHECK((has(text, "Do     nothing: all the work is done") ||
         has(text, "Do     nothing is left to do.")));
  CHECK_FALSE(has(text, "nothing today"));
  CHECK(has(text, "Use    top: light use "));
  CHECK(has(text, "and wash it from Tue 27 Apr, when it is fully cured."));
  const std::string cured = screen(logged_job(log), iso_utc(last + 60 * one_day).c_str());
  CHECK(has(cured, "Use    top: fully cured since "));
  // Nobody logged the rags: weeks do not make them go away.
  CHECK(has(cured, "Rags   out since"));
}

TEST_CASE("where a step has no time it says why and what would help, below what there is to do") {
  Job job = logged_job({});
  job.air = ConstantAir{celsius(6), humidity_percent(50)};
  Plan plan = planned_again(job, "2027-04-05T17:00Z");
  REQUIRE_FALSE(plan.schedule.unplaced.empty());
  solver::Effort effort;
  plan.remedies = remedies(plan, job, plan.now, effort);
  const std::string text = tonight_text(plan, tonight(plan), 200);
  const std::size_t work = text.find("Do "), found = text.find("No time found for ");
  REQUIRE(found != std::string::npos);
  CHECK(work < found);
  CHECK(text.find("too cold to coat", found) != std::string::npos);
  const std::size_t help = text.find("What would help", found);
  CHECK(text.find(" warmer", help) != std::string::npos);
  CHECK(text.find("Warm the room with nothing that has a flame", help) != std::string::npos);
}

TEST_CASE("rags that are dealt with are told until noon of the next day") {
  // The Sunday after has no work.
  const auto at = [&](const char* now) {
    return screen(logged_job({coat(1, back_1, "2027-04-10T16:00Z"),
                              entry(2, LogKind::rags, "", "2027-04-10T22:00Z")}),
                  now);
  };
  CHECK(has(at("2027-04-10T22:10Z"), "Rags   dealt with 22:00."));
  CHECK(has(at("2027-04-11T11:55Z"), "Rags   dealt with Sat 10 Apr, 22:00."));
  CHECK_FALSE(has(at("2027-04-11T12:00Z"), "Rags"));
}

TEST_CASE("a wiped coat leaves cloths, not a brush") {
  Job job = sample_job("oil_stain");
  job.coatings.push_back(named(class_of(job.data, "oil_polyurethane"), "varnish"));
  job.systems[0].steps = {{"stain", "finish", "wipe", 1, std::nullopt, 0},
                          {"varnish", "varnish", "brush", 2, std::nullopt, 0}};
  job.history.file = "sample.log.jsonl";
  job.history.entries = {coat(1, "top/stain/coat-1/back/coat", "2027-04-06T19:00Z")};
  const std::string text = screen(job, "2027-04-06T19:05Z");
  CAPTURE(text);
  CHECK(has(text, "After  shut the tin. The used lint-free cloths count as oily rags."));
  CHECK_FALSE(has(text, "brush"));
}

TEST_CASE("where the given airing is too little it says so and names the better hours") {
  Job job = logged_job({coat(1, back_1, "2027-04-06T19:00Z")});
  job.room.airing = AiringHabit{Opening::ajar, Opening::ajar, hours(2)};
  Plan plan = planned_again(job, "2027-04-06T19:10Z");
  Tonight now = tonight(plan);
  plan.room.emplace().verdict = HabitVerdict::enough;
  CHECK(has(tonight_text(plan, now), "Airing ajar to outdoors until 21:00."));
  plan.room->verdict = HabitVerdict::too_little;
  StretchJudgement stretch;
  stretch.coating = {plan.now - Minutes(30), plan.now + Minutes(10)};
  stretch.too_little = true;
  plan.room->stretches = {stretch};
  plan.room->proposed = AiringHabit{Opening::open, Opening::open, hours(4)};
  now.airing.proposed = {{{plan.now, plan.now + Minutes(240)}, Opening::open}};
  const std::string text = tonight_text(plan, now);
  CHECK(has(text, "Airing open to outdoors until 23:10. Your own habit (ajar to outdoors until"));
}

/// What a line says of a batch beside its lead.
std::vector<std::string> lines_with(const std::string& text, std::string_view lead) {
  std::vector<std::string> found;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);)
    if (line.starts_with(lead)) found.push_back(line.substr(lead.size()));
  return found;
}

TEST_CASE("no hour of a job tells of a batch both that it must wait and that it is dry") {
  Instant last;
  std::vector<LogEntry> log = all_done(last);
  log.insert(log.begin() + 1,
             fault(90, log[0].step, iso_utc(log[0].at + Minutes(30)).c_str(), Fault::runs));
  bool waited = false, tried = false;
  for (Instant now = log[0].at; now < last; now += Minutes(7 * 60 + 35)) {
    std::vector<LogEntry> until;
    for (const LogEntry& each : log)
      if (each.at <= now) until.push_back(each);
    const Plan plan = planned_again(logged_job(until), iso_utc(now).c_str());
    const std::string text = tonight_text(plan, tonight(plan));
    CAPTURE(text);
    std::size_t forbidden = 0;
    for (const std::string& line : lines_with(text, "Don't "))
      forbidden += has(line, " top before ") ? 1U : 0U;
    const std::size_t dry = lines_with(text, "Try   ").size();
    CHECK(forbidden + dry <= 1);
    waited = waited || forbidden > 0;
    tried = tried || dry > 0;
    CHECK(std::count(text.begin(), text.end(), '\n') <= 25);
  }
  CHECK(waited);
  CHECK(tried);
}

}  // namespace
}  // namespace tackfree
