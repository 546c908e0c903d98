#include "tackfree/document/unlogged_section.hpp"

#include "tackfree/plan/dated_work.hpp"
#include "tackfree/text/text_page.hpp"

#include <algorithm>
#include <sstream>

#include "holds.hpp"
#include "plan/planned_log.hpp"

namespace tackfree {
namespace {

using namespace testing;

const char* const planned_at = "2027-04-05T17:00Z";

/// The questions of the sample job so long after its first coat was due.
std::string questions(Job job, Minutes after, std::size_t columns = 80) {
  const LastPlan before = as_last(planned_again(job, planned_at));
  const auto coat_step = std::ranges::find(before.steps, back_1, &LastStep::key);
  REQUIRE(coat_step != before.steps.end());
  const Instant now = coat_step->time.end + after;
  job.last_plan = before;
  const Plan plan = planned_again(job, iso_utc(now).c_str());
  TextPage page(static_cast<int>(columns));
  solver::Effort effort{.left = most_effort};
  write_questions(page, plan, unlogged(plan, job, {before}, now, effort), StepWords(plan));
  return page.text();
}

TEST_CASE("a question has the command for yes, what comes then, and what no means") {
  const std::string text = questions(sample_job(), Minutes(5));
  CAPTURE(text);
  CHECK(text.starts_with("Done?  planned for "));
  CHECK(holds(text,
              " and not logged: coat 1 of 3, back.\n       Yes: tackfree log coat sample.json "
              "--at "));
  CHECK(holds(text, "\n            Then nothing to do before "));
  CHECK(holds(text, ": turn over.\n       No:  log nothing. It is planned for "));
  CHECK(holds(text, " and not logged: sand bare wood, P"));
  CHECK(holds(text, "P220.\n"));
  CHECK(holds(text, "\n       Yes: tackfree log done sample.json --step sand-p220 --at "));
}

TEST_CASE("work of the day before has its day, in words and in the command") {
  const std::string text = questions(sample_job(), 24 * one_hour);
  CAPTURE(text);
  CHECK(holds(text, "planned for yesterday at "));
  CHECK(holds(text, "--at 2027-04-0"));
}

TEST_CASE("a command too long for the page is broken where the shell goes on") {
  Job job = sample_job();
  job.file = "my jobs/sample.json";
  for (const std::size_t columns : {40U, 60U, 80U}) {
    const std::string text = questions(job, Minutes(5), columns);
    CAPTURE(text);
    CHECK(holds(text, "'my jobs/sample.json'"));
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
      CHECK(line.size() <= columns);
      // The next line of the command begins with an option or the file.
      if (line.find("tackfree log") != std::string::npos && line.ends_with("\\")) {
        REQUIRE(std::getline(lines, line));
        CHECK((holds(line, "--") || holds(line, "'my jobs")));
      }
    }
  }
}

TEST_CASE(
    "the words of the command are quoted for the shell, and an hour that comes twice is UTC") {
  Job job = sample_job();
  job.calendar.zone = *Zone::named("America/New_York");
  Report report{.kind = LogKind::coat, .at = instant("2027-11-07T06:30Z")};
  report.batch = "it's";
  report.coat = 2;
  report.side = "back";
  const auto words = log_command_words(job, report, instant("2027-11-07T08:00Z"));
  const std::vector<std::string> wanted{"tackfree log coat",  "sample.json",
                                        "--batch 'it'\\''s'", "--coat 2",
                                        "--side back",        "--at 2027-11-07T06:30:00Z"};
  CHECK(words == wanted);
  report.at = instant("2027-11-07T05:30Z");
  CHECK(log_command_words(job, report, instant("2027-11-07T08:00Z")).back() == "--at 01:30");
  job.units = UnitSystem::us;
  CHECK(log_command_words(job, report, instant("2027-11-07T08:00Z")).back() == "--at '1:30 am'");
  CHECK(log_command_words(job, report, instant("2027-11-09T08:00Z")).back() ==
        "--at '2027-11-07 1:30 am'");
}

TEST_CASE("what is older is summed up in a line") {
  Job job = sample_job();
  add_legs(job);
  const std::string text = questions(job, 14 * one_day);
  CAPTURE(text);
  CHECK(holds(text, "Not in your log either: "));
  CHECK(holds(text, "legs: sand bare wood, P"));
}

}  // namespace
}  // namespace tackfree
