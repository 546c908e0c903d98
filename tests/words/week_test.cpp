#include "tackfree/words/week.hpp"

#include "shown_month.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a week ends before the person's first day, and days before and after are left out") {
  const auto sundays = weeks_of(month, figures_beginning_on({}));
  REQUIRE(sundays.size() == 5);
  // Wednesday 10 March to Saturday; four whole weeks; Sunday 4 April to Thursday.
  CHECK(sundays.front().time().begin == at("2027-03-10T05:00:00Z"));
  CHECK(sundays.front().day_count() == 4);
  CHECK(sundays[1].day_count() == 7);
  CHECK(sundays.back().time() == Interval{at("2027-04-04T04:00:00Z"), month.end});
  const auto mondays = weeks_of(month, figures_beginning_on(0));
  CHECK(mondays[1].time().begin == at("2027-03-15T04:00:00Z"));
  CHECK(mondays.front().day_count() == 5);
  CHECK(weeks_of({month.begin, month.begin}, figures_beginning_on(0)).empty());
}

TEST_CASE("days stand in rows of so many, the last row with what is left") {
  const auto rows = days_in_rows(month, 4, figures_beginning_on({}));
  REQUIRE(rows.size() == 8);  // 30 days
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CHECK(rows[i].day_count() == (i + 1 < rows.size() ? 4 : 2));
    if (i > 0) CHECK(rows[i].time().begin == rows[i - 1].time().end);
  }
  CHECK(rows.front().time().begin == at("2027-03-10T05:00:00Z"));
  CHECK(rows.back().time().end == month.end);
  CHECK(days_in_rows({month.begin, month.begin}, 4, figures_beginning_on({})).empty());
}

TEST_CASE("days are counted by the local clock, the short one too; outside counts as the ends") {
  const Week week = weeks_of(month, figures_beginning_on({})).at(1);
  CHECK(week.midnights().at(1) - week.midnights().at(0) == Minutes(23 * 60));
  CHECK(week.days_to(week.midnights().at(1)) == 1.0);
  CHECK(week.days_to(week.midnights().at(0) + Minutes(23 * 30)) == 0.5);
  CHECK(week.days_to(week.time().begin - Minutes(600)) == 0.0);
  CHECK(week.days_to(week.time().end + Minutes(600)) == 7.0);
}

TEST_CASE("what lies outside a week is cut off") {
  const Week week = weeks_of(month, figures_beginning_on({})).front();
  CHECK_FALSE(week.within({week.time().end, week.time().end + Minutes(60)}));
  const auto cut = week.within({week.time().begin - Minutes(60), week.time().begin + Minutes(60)});
  REQUIRE(cut);
  CHECK(cut->length() == Minutes(60));
}
