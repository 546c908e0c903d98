#include "tackfree/logged/coat_trials.hpp"

#include "tackfree/logged/log_facts.hpp"
#include "tackfree/plan/make_work_at_hand.hpp"

#include <algorithm>

#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

Instant begin_of(const Plan& plan, const std::string& key) {
  const auto found = std::ranges::find_if(plan.schedule.steps, [&](const DatedStep& s) {
    return plan.list.operations[s.operation].key == key;
  });
  REQUIRE(found != plan.schedule.steps.end());
  return found->begin();
}

TEST_CASE("a thumb test that failed puts the next work off, one that is passed lets it go on") {
  const char* now = "2027-04-07T19:00Z";
  const Plan plain = planned_log({coat(1, back_1, "2027-04-06T19:33Z")}, now);
  const Plan failed = planned_log(
      {coat(1, back_1, "2027-04-06T19:33Z"), thumb(2, back_1, "2027-04-07T18:55Z", false)}, now);
  const Plan passed = planned_log(
      {coat(1, back_1, "2027-04-06T19:33Z"), thumb(2, back_1, "2027-04-07T18:50Z", false),
       thumb(3, back_1, "2027-04-07T18:55Z", true)},
      now);
  const std::string turn = "top/finish/coat-1/both/turn-over";
  CHECK(begin_of(plain, turn) == instant(now));
  CHECK(begin_of(failed, turn) > instant("2027-04-07T19:30Z"));
  CHECK(begin_of(passed, turn) == instant(now));
  CHECK(failed.slowness.at(0).factor > 1.0);
}

TEST_CASE("what coats took teaches how thirsty the rest will be") {
  Problems problems;
  const auto expected = make_work_at_hand(logged_job({}), instant("2027-04-05T17:00Z"), problems);
  const double planned_litres = operation_called(expected->list, back_1)->mixed.in(litres);
  const Plan plan = planned_log({coat(1, back_1, "2027-04-06T19:33Z", planned_litres * 1.3)},
                                "2027-04-06T20:00Z");
  CHECK(plan.thirst.at(0).readings == 1);
  CHECK(plan.thirst.at(0).factor > 1.0);
  CHECK(operation_called(plan.list, back_2)->mixed >
        operation_called(expected->list, back_2)->mixed);
}

}  // namespace
}  // namespace tackfree
