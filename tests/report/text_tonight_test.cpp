#include "tackfree/report/text_tonight.hpp"

#include <algorithm>
#include <sstream>

#include "report/logged_plan.hpp"

namespace tackfree {
namespace {

using namespace testing;

std::string screen(Job job, const char* now) {
  const Plan plan = logged_plan(std::move(job), now);
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
  CHECK(has(text, "No sanding or sweeping"));
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
  CHECK(has(text, "No coat in this air."));
}

}  // namespace
}  // namespace tackfree
