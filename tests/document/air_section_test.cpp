#include "tackfree/document/air_section.hpp"

#include "tackfree/text/text_page.hpp"

#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::string air_of(const Plan& plan) {
  TextPage page(80);
  write_air(page, plan, Figures(plan.job));
  return page.text();
}

/// A day of rows with a gap of two hours, replayed from 2013.
AirRows small_rows(Instant begin) {
  AirRows rows{.file = "garage.csv", .recorded_in = 2013, .origin = "a station by the sea"};
  for (int hour = 0; hour <= 72; ++hour)
    if (hour != 5)
      rows.rows.push_back({.at = begin + Minutes(60L * hour),
                           .temperature = celsius(15),
                           .humidity = humidity_percent(50)});
  return rows;
}

}  // namespace

TEST_CASE("constant air is said to be the person's own word") {
  CHECK(holds(air_of(small_plan({}, UnitSystem::metric)),
              "- Always 15 \u00b0C and 55 % RH, as you gave it.\n"));
}

TEST_CASE("replayed rows name their file, year, gaps and where typical air begins") {
  Plan plan = small_plan();
  plan.job.air = small_rows(plan.now);
  Problems problems;
  plan.air = AirSeries::over(plan.job.air, plan.schedule.span, problems).value();
  const std::string text = air_of(plan);
  CHECK(holds(text, "Hourly rows of garage.csv: a station by the sea, taken as the room's own"));
  CHECK(holds(text, "Recorded in 2013 and replayed"));
  CHECK(holds(text, "No rows between Fri Apr 9, 9:00 pm and Fri Apr 9, 11:00 pm"));
  CHECK(holds(text, "After Mon Apr 12, 5:00 pm there are no rows"));
}

TEST_CASE("a month that has no values of its own is told, with the one that serves") {
  Plan plan = small_plan();
  AirMonths months;
  months.months[3] = {.low = celsius(8), .high = celsius(16), .humidity = humidity_percent(60)};
  plan.job.air = AirMix{.sources = {{"usual", months}}};
  Problems problems;
  plan.air = AirSeries::over(plan.job.air, plan.schedule.span, problems).value();
  CHECK(holds(air_of(plan), "May has no typical values of its own: the plan uses those of April"));
}

TEST_CASE("wood that settles where it is not right for heated rooms is a thing to look at") {
  Plan plan = small_plan();
  plan.wood_week = {plan.now - Minutes(7 * 24 * 60), plan.now};
  plan.wood_moisture = percent(8);
  CHECK(air_of(plan).find("- Wood kept in the mean air of the week up to ") != std::string::npos);
  CHECK(air_of(plan).find("6 to 9 %") == std::string::npos);
  for (const double told : {5.0, 17.0}) {
    plan.wood_moisture = percent(told);
    CHECK(air_of(plan).find("! Wood kept in the mean air of the week") != std::string::npos);
    CHECK(air_of(plan).find("should be at 6 to 9 %") != std::string::npos);
  }
}
