#include "tackfree/report/week_axis.hpp"

#include "report/small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Figures figures_beginning_on(std::optional<int> day) {
  Job job = small_job({}, UnitSystem::us);
  job.week_begins_on = day;
  return Figures(job);
}

const Interval month{at("2027-03-10T17:00:00Z"), at("2027-04-09T04:00:00Z")};

}  // namespace

TEST_CASE("weeks begin on the person's first day and hold all days of the course") {
  const auto sundays = weeks_of(month, figures_beginning_on({}));
  REQUIRE(sundays.size() == 5);
  CHECK(sundays.front().time().begin == at("2027-03-07T05:00:00Z"));
  CHECK(sundays.back().time().end >= month.end);
  const auto mondays = weeks_of(month, figures_beginning_on(0));
  CHECK(mondays.front().time().begin == at("2027-03-08T05:00:00Z"));
}

TEST_CASE("each day is as wide as the others, the day without two o'clock too") {
  const WeekAxis week = weeks_of(month, figures_beginning_on({})).at(1);
  CHECK(week.midnights().at(1) - week.midnights().at(0) == Minutes(23 * 60));
  const double first = week.x(week.midnights().at(1)) - week.x(week.midnights().at(0));
  const double second = week.x(week.midnights().at(2)) - week.x(week.midnights().at(1));
  CHECK(first == doctest::Approx(second));
}

TEST_CASE("what lies outside a week stands at its ends or is not shown") {
  const WeekAxis week = weeks_of(month, figures_beginning_on({})).front();
  CHECK(week.x(week.time().begin - Minutes(600)) == WeekAxis::left);
  CHECK(week.x(week.time().end + Minutes(600)) == WeekAxis::width - 2);
  CHECK_FALSE(week.within({week.time().end, week.time().end + Minutes(60)}));
  const auto cut = week.within({week.time().begin - Minutes(60), week.time().begin + Minutes(60)});
  REQUIRE(cut);
  CHECK(cut->length() == Minutes(60));
}

TEST_CASE("the axis marks weekends, nights, now, and where known air ends") {
  Plan plan = small_plan();
  Markup svg;
  write_axis(svg, weeks_of(plan.course.days, Figures(plan.job)).front(), plan, Figures(plan.job),
             100);
  const std::string& axis = svg.markup();
  CHECK(axis.find("class=\"weekend\"") != std::string::npos);
  CHECK(axis.find("class=\"night\"") != std::string::npos);
  CHECK(axis.find(">now<") != std::string::npos);
  CHECK(axis.find("Sat Apr 10") != std::string::npos);
  CHECK(axis.find("class=\"seam\"") == std::string::npos);
}
