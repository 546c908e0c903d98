#include "tackfree/document/log_sections.hpp"

#include "tackfree/text/screens.hpp"

#include "plan/planned_log.hpp"

namespace tackfree {
namespace {

using namespace testing;

TEST_CASE("a report is told back with batch, coat, side, hour, litres and air") {
  Problems problems;
  Report report{.kind = LogKind::coat, .at = instant("2027-04-06T19:10Z")};
  report.amount = litres(0.35);
  report.temperature = celsius(12);
  report.humidity = humidity_percent(70);
  const auto told = understood(logged_job({}), report, instant("2027-04-06T19:20Z"), problems);
  REQUIRE(told);
  const std::string text = understood_text(*told, 200);
  CHECK(text.find("coat 1 of 3, back, put on; Tue 6 Apr, 19:10; 350 ml; air 12 ") !=
        std::string::npos);
}

TEST_CASE("the log shows its numbers, what was insisted on, and what was torn off") {
  Job job = logged_job(
      {coat(4, back_1, "2027-04-06T19:00Z", 0.1), thumb(5, back_1, "2027-04-07T18:00Z", false)});
  job.history.entries[0].insisted = true;
  job.history.torn = "{\"id\":6,\"wri";
  const std::string text = log_text(job, 200);
  CHECK(text.find("  4  Tue 6 Apr, 19:00") != std::string::npos);
  CHECK(text.find("insisted on") != std::string::npos);
  CHECK(text.find("thumb test failed") != std::string::npos);
  CHECK(text.find("cut off while it was written") != std::string::npos);
  CHECK(log_text(logged_job({})).find("The log is empty.") != std::string::npos);
}

TEST_CASE("what is taken back is told by its number, and stands in place of nothing") {
  Problems problems;
  Report report{.kind = LogKind::withdrawn, .at = instant("2027-04-06T19:10Z")};
  report.corrects = 4;
  const auto told = understood(logged_job({coat(4, back_1, "2027-04-06T19:00Z", 0.1)}), report,
                               instant("2027-04-06T19:20Z"), problems);
  REQUIRE(told);
  const std::string text = understood_text(*told, 200);
  CHECK(text.find("number 4 is taken back") != std::string::npos);
  CHECK(text.find("in place of") == std::string::npos);
}

TEST_CASE("what was bought and whose hours changed are told, with day and clock") {
  LogEntry all = entry(1, LogKind::bought, "", "2027-04-05T10:00Z");
  all.bought = {{"finish", "1 qt", us_quarts(1), 2, false},
                {"mineral spirits", "", litres(0.5), 1, true}};
  LogEntry away = entry(2, LogKind::away, "", "2027-04-05T10:00Z");
  away.hours = Interval{instant("2027-04-15T00:00Z"), instant("2027-04-16T00:00Z")};
  LogEntry free = entry(3, LogKind::free, "", "2027-04-05T10:00Z");
  free.hours = Interval{instant("2027-04-15T20:00Z"), instant("2027-04-15T21:30Z")};
  free.person = "Ada";
  LogEntry thinner = entry(4, LogKind::tin, "", "2027-04-05T10:00Z");
  thinner.tin = TinEvent::bought;
  thinner.thinner = "mineral spirits";
  thinner.amount = litres(1);
  const std::string text = log_text(logged_job({all, away, free, thinner}), 200);
  CAPTURE(text);
  CHECK(text.find("bought: 2 x 1 qt finish, 1 x 500 ml mineral spirits") != std::string::npos);
  CHECK(text.find("away Thu 15 Apr, all day") != std::string::npos);
  CHECK(text.find("Ada free Thu 15 Apr, 20:00 to 21:30") != std::string::npos);
  CHECK(text.find("mineral spirits: a tin bought") != std::string::npos);
}

}  // namespace
}  // namespace tackfree
