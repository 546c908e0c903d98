#include "tackfree/schedule/rule_days.hpp"

#include <random>

#include <doctest/doctest.h>

namespace tackfree {
namespace {

using Every = Recurrence::Every;

int any_of_first(std::minstd_rand& random, int count) {
  return static_cast<int>(random() % static_cast<unsigned>(count));
}

Recurrence random_rule(std::minstd_rand& random) {
  Recurrence rule{.every = static_cast<Every>(any_of_first(random, 4)),
                  .interval = 1 + any_of_first(random, 7)};
  const bool nth = rule.every == Every::month || rule.every == Every::year;
  if (any_of_first(random, 2) == 0)
    for (int n = 1 + any_of_first(random, 3); n > 0; --n)
      rule.weekdays.push_back({nth ? any_of_first(random, 11) - 5 : 0, any_of_first(random, 7)});
  if (rule.every != Every::week && any_of_first(random, 3) == 0)
    rule.month_days = {1 + any_of_first(random, 31), -1 - any_of_first(random, 31)};
  if (any_of_first(random, 3) == 0)
    rule.months = {1 + any_of_first(random, 12), 1 + any_of_first(random, 12)};
  if (any_of_first(random, 3) == 0)
    rule.positions = {1 + any_of_first(random, 4), -1 - any_of_first(random, 2)};
  rule.week_begins_on = any_of_first(random, 7);
  return rule;
}

TEST_CASE("days counted by alike years are as many as those walked one by one") {
  std::minstd_rand random(1);
  for (int n = 0; n < 400; ++n) {
    const Recurrence rule = random_rule(random);
    const Date first = date::year(1600 + any_of_first(random, 400)) /
                       date::month(1U + static_cast<unsigned>(any_of_first(random, 12))) /
                       date::day(1U + static_cast<unsigned>(any_of_first(random, 28)));
    const RuleDays rule_days(rule, first);
    const int last =
        rule_days.period_at(date::sys_days(add_days(first, 1 + any_of_first(random, 20'000))));
    std::int64_t walked = 0;
    std::vector<RuleDays::Day> found;
    for (int period = 0; period < last; ++period) {
      rule_days.days_in(period, found);
      for (const RuleDays::Day day : found) walked += day > RuleDays::Day(first) ? 1 : 0;
    }
    CAPTURE(n);
    CHECK(rule_days.days_before(last) == walked);
  }
}

TEST_CASE("the period of a day begins no later, and the next one does") {
  std::minstd_rand random(2);
  for (int n = 0; n < 400; ++n) {
    const Recurrence rule = random_rule(random);
    const Date first = date::year(1600) /
                       date::month(1U + static_cast<unsigned>(any_of_first(random, 12))) /
                       date::day(28);
    const RuleDays rule_days(rule, first);
    const RuleDays::Day day(add_days(first, any_of_first(random, 150'000)));
    const int period = rule_days.period_at(day);
    CAPTURE(n);
    CHECK(rule_days.period_begin(period) <= day);
    CHECK(rule_days.period_begin(period + 1) > day);
  }
}

}  // namespace
}  // namespace tackfree
