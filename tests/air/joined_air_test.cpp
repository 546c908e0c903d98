#include "tackfree/air/joined_air.hpp"

#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

const Instant joined_from = instant("2026-04-10T00:00:00Z");
const Interval joined_days{joined_from, joined_from + Minutes(10 * 1440)};

AirRows rows_for(int hours_long) {
  return hourly(joined_from, std::vector<double>(static_cast<std::size_t>(hours_long) + 1, 12.0),
                5);
}

AirMonths april() {
  AirMonths months;
  months.months[3] = DayRange{.low = celsius(6), .high = celsius(16), .dew_point = celsius(4)};
  return months;
}

AirDays days_from(Instant midnight, int count) {
  AirDays result;
  for (int i = 0; i < count; ++i)
    result.days.push_back(
        {midnight + Minutes(1440L * i),
         {.low = celsius(8), .high = celsius(18), .dew_point = celsius(3), .line = 10 + i}});
  return result;
}

Problems problems_of(const AirMix& mix) {
  Problems problems;
  CHECK_FALSE(joined_air(mix, joined_days, problems));
  return problems;
}

}  // namespace

TEST_CASE("Sources follow each other in order and the seams are told") {
  const AirMix mix{.file = "job.json",
                   .sources = {{"forecast", rows_for(50), 3},
                               {"lows and highs", days_from(joined_from, 4), 4},
                               {"", april(), 5}}};
  Problems problems;
  const auto air = joined_air(mix, joined_days, problems);
  REQUIRE(air);
  REQUIRE(air->seams.size() == 2);
  CHECK(air->seams[0].at == joined_from + Minutes(50 * 60));
  CHECK(air->seams[0].before.name == "forecast");
  CHECK(air->seams[0].after.name == "lows and highs");
  CHECK(air->seams[1].at == joined_from + Minutes(4 * 1440));
  CHECK(air->seams[1].after.name.empty());
  CHECK(air->seams[1].after.typical_month == 4);
  CHECK(air->typical_from == joined_from + Minutes(4 * 1440));
  CHECK_FALSE(air->mean_day_from);
  for (std::size_t i = 1; i < air->nodes.size(); ++i)
    CHECK(air->nodes[i].at - air->nodes[i - 1].at == Minutes(60));
  CHECK(air->nodes[50].state.temperature == celsius(12));
  CHECK(air->nodes[51].state.temperature.in_celsius() == doctest::Approx(18 - 10 * 0.95));
}

TEST_CASE("A constant after a forecast is typical, alone it is the person's word") {
  const ConstantAir constant{celsius(15), humidity_percent(60)};
  Problems problems;
  const auto after =
      joined_air({.file = "", .sources = {{"forecast", rows_for(30), 3}, {"guess", constant, 4}}},
                 joined_days, problems);
  CHECK(after.value().typical_from == joined_from + Minutes(30 * 60));
  CHECK_FALSE(joined_air({.file = "", .sources = {{"", constant, 3}}}, joined_days, problems)
                  .value()
                  .typical_from);
}

TEST_CASE("An old forecast gives way to typical months from the start") {
  AirRows old = rows_for(30);
  for (AirRow& row : old.rows) row.at -= Minutes(5 * 1440);
  Problems problems;
  const auto air = joined_air({.file = "", .sources = {{"forecast", old, 3}, {"", april(), 4}}},
                              joined_days, problems);
  REQUIRE(air);
  CHECK(air->seams.empty());
  CHECK(air->typical_from == joined_from);
}

TEST_CASE("What comes after the last source is its mean day") {
  Problems problems;
  const auto air = joined_air({.file = "", .sources = {{"days", days_from(joined_from, 3), 3}}},
                              joined_days, problems);
  REQUIRE(air);
  CHECK(air->mean_day_from == joined_from + Minutes(3 * 1440));
  CHECK(air->typical_from == air->mean_day_from);
}

TEST_CASE(
    "Gaps between sources and days left out are named, and so are months of which none is given") {
  const Problems gap =
      problems_of({.file = "job.json",
                   .sources = {{"forecast", rows_for(20), 3},
                               {"days", days_from(joined_from + Minutes(2880), 9), 7}}});
  REQUIRE(gap.size() == 1);
  CHECK(gap[0].line == 7);
  CHECK(gap[0].wanted.find("where forecast has ended and days has not begun") != std::string::npos);

  AirDays holed = days_from(joined_from, 11);
  holed.days.erase(holed.days.begin() + 4);
  const Problems left_out = problems_of({.file = "job.json", .sources = {{"days", holed, 3}}});
  REQUIRE_FALSE(left_out.empty());
  CHECK(left_out[0].line == 15);
  CHECK(left_out[0].wanted.find("none left out") != std::string::npos);

  const Problems none = problems_of({.file = "job.json", .sources = {{"", AirMonths(), 6}}});
  REQUIRE_FALSE(none.empty());
  CHECK(none[0].line == 6);
  CHECK(none[0].wanted == "wanted at least one typical month");

  const Problems late = problems_of(
      {.file = "job.json", .sources = {{"days", days_from(joined_from + Minutes(1440), 9), 3}}});
  REQUIRE_FALSE(late.empty());
  CHECK(late[0].wanted.find("from the plan's start on") != std::string::npos);
}

TEST_CASE("A plan that runs on into a month without values has those of the month beside it") {
  const Interval into_june{joined_from, instant("2026-06-20T00:00:00Z")};
  Problems problems;
  const auto air =
      joined_air({.file = "job.json", .sources = {{"", april(), 3}}}, into_june, problems);
  REQUIRE(problems.empty());
  REQUIRE(air);
  CHECK(air->nodes.back().at >= into_june.end);
  CHECK(air->held_months == std::vector<HeldMonth>{{5, 4}, {6, 4}});
  CHECK(air->nodes.back().state.temperature == air->nodes.front().state.temperature);
}
