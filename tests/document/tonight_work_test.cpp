#include "tackfree/document/tonight_work.hpp"

#include "tackfree/text/text_page.hpp"

#include <string>

#include "holds.hpp"
#include "plan/planned_log.hpp"

namespace tackfree {
namespace {

using namespace testing;

std::string work_of(Job job, const char* now) {
  const Plan plan = planned_again(std::move(job), now);
  TextPage page(80);
  write_tonight_work(page, plan, tonight(plan), StepWords(plan));
  return page.text();
}

/// A long Monday: bare wood and the first coat in one stretch.
Job long_day(const std::string& class_key = "oil_polyurethane") {
  Job job = sample_job(class_key);
  job.calendar.weekly[0] = {{8 * 60, 22 * 60}};
  job.calendar.no_power_sanding.clear();
  return job;
}

TEST_CASE("the grits of one piece are one line, and the coat comes with its pour") {
  const std::string text = work_of(long_day(), "2027-04-05T08:00Z");
  CAPTURE(text);
  CHECK(holds(text, "sand bare wood, P"));
  CHECK(holds(text, " to P220 ("));
  CHECK(holds(text, "coat 1 of 3, back, dusted off first ("));
  CHECK(holds(text, "pour "));
}

TEST_CASE("a coat is never counted only, however much else there is") {
  const Plan plan = planned_again(sample_job(), "2027-04-05T17:00Z");
  Tonight now = tonight(plan);
  now.work.clear();
  std::size_t coats = 0, pours = 0;
  for (std::size_t step = 0; step < plan.schedule.steps.size(); ++step) {
    now.work.push_back(step);
    coats += plan.list.operations[plan.schedule.steps[step].operation].coating ? 1U : 0U;
  }
  TextPage page(80);
  write_tonight_work(page, plan, now, StepWords(plan));
  CAPTURE(page.text());
  for (std::size_t at = 0; (at = page.text().find(" pour ", at)) != std::string::npos; ++at)
    ++pours;
  CHECK(coats == 6);
  CHECK(pours == coats);
  CHECK(holds(page.text(), "more without a coat; `tackfree plan` has them all."));
}

TEST_CASE("wiping off has a line with its minute") {
  const std::string text = work_of(long_day("hardwax_oil"), "2027-04-05T08:00Z");
  CAPTURE(text);
  CHECK(holds(text, "wipe off coat 1, back ("));
}

TEST_CASE("a pot has its end, and several people their names") {
  Job job = long_day("two_component_polyurethane");
  job.people = {{"Ann", job.calendar, 0}, {"Bo", job.calendar, 0}};
  const std::string text = work_of(std::move(job), "2027-04-05T08:00Z");
  CAPTURE(text);
  CHECK(holds(text, "pot good until "));
  CHECK((holds(text, " Ann: ") || holds(text, " Bo: ")));
}

TEST_CASE("an open fault is told with its advice") {
  const Plan plan = planned_log(
      {coat(1, back_1, "2027-04-06T19:00Z"), fault(2, back_1, "2027-04-06T20:00Z", Fault::runs)},
      "2027-04-06T20:05Z");
  TextPage page(80);
  write_open_faults(page, plan, tonight(plan), StepWords(plan));
  CAPTURE(page.text());
  CHECK(holds(page.text(), "Fault  coat 1 of 3, back: runs or sags. A run or sag: leave it"));
}

}  // namespace
}  // namespace tackfree
