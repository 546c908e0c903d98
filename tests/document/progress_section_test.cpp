#include "tackfree/document/progress_section.hpp"

#include "tackfree/text/text_page.hpp"

#include "plan/planned_log.hpp"

namespace tackfree {
namespace {

using namespace testing;

std::string progress(const Plan& plan) {
  TextPage page(80);
  write_progress(page, plan, StepWords(plan));
  return page.text();
}

bool tells(const std::string& text, std::string_view what) {
  return text.find(what) != std::string::npos;
}

TEST_CASE("without a log and a last plan there is nothing to tell") {
  CHECK(progress(planned_again(logged_job({}), "2027-04-05T17:00Z")).empty());
}

TEST_CASE("what is done has its hour, and the rate learnt from it stands beside the label's") {
  const std::string text = progress(
      planned_again(logged_job({coat(1, back_1, "2027-04-06T19:00Z", 0.12)}), "2027-04-06T20:00Z"));
  CHECK(tells(text, "[x] Tue 6 Apr, 19:00"));
  CHECK(tells(text, "your rate so far: "));
  CHECK(tells(text, "after 1 coat ("));
  CHECK(tells(text, "\"earlier_jobs\": {\"need_factor\": "));
  CHECK(tells(text, "Not in the log, but taken as done"));
}

TEST_CASE("a coat that took far too much is asked about by its number") {
  const std::string text = progress(
      planned_again(logged_job({coat(9, back_1, "2027-04-06T19:00Z", 1.5)}), "2027-04-06T20:00Z"));
  CHECK(tells(text, "number 9 of the log takes far more or less"));
  CHECK_FALSE(tells(text, "your rate so far"));
}

TEST_CASE("what moved is told with how far and why") {
  const Plan first = planned_again(logged_job({}), "2027-04-05T17:00Z");
  Job job = logged_job(
      {coat(1, back_1, "2027-04-06T19:00Z"), thumb(2, back_1, "2027-04-07T18:00Z", false)});
  job.last_plan = LastPlan{job.id, first.now, first.schedule.ready_at, {}, {}};
  for (const DatedStep& step : first.schedule.steps)
    job.last_plan->steps.push_back(
        {first.list.operations[step.operation].key, "", {step.begin(), step.end()}, false});
  const std::string text = progress(planned_again(job, "2027-04-07T18:05Z"));
  CHECK(tells(text, "WHAT MOVED SINCE THE PLAN OF MON 5 APR, 17:00"));
  CHECK(tells(text, "later."));
  CHECK(tells(text, "failed its test"));
}

TEST_CASE("how slowly coats dry is told after trials, and kept for the next job beside the rate") {
  const std::string text =
      progress(planned_again(logged_job({coat(1, back_1, "2027-04-06T19:00Z"),
                                         thumb(2, back_1, "2027-04-08T18:00Z", false)}),
                             "2027-04-08T18:05Z"));
  CHECK(tells(text, "your coats take 1."));
  CHECK(tells(text, "as long as estimated to dry (1"));
  CHECK(tells(text, "\"earlier_jobs\": {\"drying_factor\": 1."));
}

TEST_CASE("what earlier jobs have taught is told without a log, and not offered to be kept again") {
  Job job = sample_job();
  job.coatings[0].need_taught = {1.1, 3};
  const std::string text = progress(planned_again(job, "2027-04-05T17:00Z"));
  CHECK(tells(text, "LEARNED FROM EARLIER JOBS"));
  CHECK(tells(text, "after 3 coats ("));
  CHECK_FALSE(tells(text, "earlier_jobs"));
}

}  // namespace
}  // namespace tackfree
