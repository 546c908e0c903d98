#include "tackfree/report/text_tonight.hpp"

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

TEST_CASE("an evening is one screen of 24 lines and 80 columns") {
  for (const std::string& text :
       {screen(logged_job({}), "2027-04-05T18:00Z"),
        screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z")}), "2027-04-06T19:10Z"),
        screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z"),
                           thumb(2, back_1, "2027-04-07T18:00Z", false)}),
               "2027-04-07T18:05Z")}) {
    CAPTURE(text);
    CHECK(std::count(text.begin(), text.end(), '\n') <= 24);
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) CHECK(line.size() <= 80 + 10);
  }
}

TEST_CASE("it says what to do, and defers to the label") {
  const std::string text = screen(logged_job({}), "2027-04-05T18:00Z");
  CHECK(has(text, "Do   now: "));
  CHECK(has(text, "sand bare wood"));
  CHECK(has(text, "label"));
}

TEST_CASE("a wet coat has its share and its hour, and sanding is forbidden beside it") {
  const std::string text =
      screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z")}), "2027-04-06T19:10Z");
  CHECK(has(text, "of the way to dry to handle; ready"));
  CHECK(has(text, "No   sanding or sweeping"));
  CHECK(has(text, "Oily rags heat themselves"));
}

TEST_CASE("a failed test is said, and air that is not fit forbids a coat") {
  LogEntry cold = entry(3, LogKind::air, "", "2027-04-07T18:04Z");
  cold.temperature = celsius(3);
  const std::string text = screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z"),
                                              thumb(2, back_1, "2027-04-07T18:00Z", false), cold}),
                                  "2027-04-07T18:05Z");
  CHECK(has(text, "It failed its test"));
  CHECK(has(text, "as read"));
  CHECK(has(text, "not fit for finish now: too cold"));
  CHECK(has(text, "No   coat in this air."));
}

TEST_CASE("every rule against a coat is told, and how old the reading is") {
  LogEntry cold = entry(1, LogKind::air, "", "2027-04-07T17:50Z");
  cold.temperature = celsius(3);
  cold.humidity = humidity_percent(92);
  const std::string text = screen(logged_job({cold}), "2027-04-07T18:05Z");
  CHECK(has(text, "by your reading 15 min ago"));
  CHECK(has(text, "not fit for finish now: too cold to coat"));
  CHECK(has(text, "too damp to coat"));
  CHECK(has(text, "too near the dew point"));
  CHECK(has(text, "Fit again"));
  CHECK(has(screen(logged_job({cold}), "2027-04-07T23:05Z"), "by the forecast"));
}

TEST_CASE("a day without work says so as one would at that hour, and what is next and why") {
  // On the Wednesday the first coat dries; the next hours are at six in the evening.
  const std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T21:20Z")};
  const auto at = [&](const char* now) { return screen(logged_job(log), now); };
  const std::string late = at("2027-04-06T21:30Z");
  CHECK(has(late, "Do   nothing more tonight. Next, tomorrow at 18:00, in 21 h: turn over; "));
  const std::string small_hours = at("2027-04-07T01:00Z");
  CHECK(has(small_hours, "Do   nothing before 18:00, in 17 h; then"));
  const std::string sunday = at("2027-04-11T09:00Z");
  CHECK(has(sunday, "Do   nothing today. Next, tomorrow at 18:00, in 33 h: turn over; "));
  CHECK(has(at("2027-04-11T19:00Z"), "Do   nothing tonight. Next, tomorrow at 18:00"));
}

TEST_CASE(
    "a coat that is not dry to handle is not to be moved, one that waits for sanding let be") {
  const std::string wet =
      screen(logged_job({coat(1, back_1, "2027-04-06T19:00Z")}), "2027-04-06T19:10Z");
  CHECK(has(wet, "No   turning or moving of top before "));
  const std::string both = screen(
      logged_job({coat(1, back_1, "2027-04-06T19:00Z"), coat(2, show_1, "2027-04-07T19:00Z")}),
      "2027-04-07T19:10Z");
  CHECK(has(both, "No   sanding or coating of top before "));
}

TEST_CASE("when all is done it says so, and when the piece is ready") {
  std::vector<LogEntry> log;
  int id = 0;
  const Plan whole = planned_again(sample_job(), "2027-04-05T17:00Z");
  Instant last;
  for (const DatedStep& step : whole.schedule.steps) {
    const Operation& op = whole.list.operations[step.operation];
    const bool coats = op.kind == OperationKind::coat;
    if (coats || op.kind == OperationKind::fit_hardware)
      log.push_back(
          entry(++id, coats ? LogKind::coat : LogKind::done, op.key, iso_utc(step.end()).c_str()));
    last = step.end();
  }
  const std::string text = screen(logged_job(log), iso_utc(last + Minutes(5)).c_str());
  CAPTURE(text);
  CHECK((has(text, "Do   nothing: all the work is done") ||
         has(text, "Do   nothing is left to do.")));
  CHECK_FALSE(has(text, "nothing today"));
}

}  // namespace
}  // namespace tackfree
