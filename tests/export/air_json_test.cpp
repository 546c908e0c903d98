#include "tackfree/export/air_json.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("joined sources, their seams, the heated room and the boards stand in the JSON") {
  Plan plan = small_plan();
  AirMonths months;
  for (auto& month : months.months)
    month = DayRange{.low = celsius(4), .high = celsius(14), .dew_point = celsius(2)};
  AirRows rows{.file = "a.csv", .rows = {}, .recorded_in = std::nullopt, .origin = "a logger"};
  for (int hour = 0; hour <= 20; ++hour)
    rows.rows.push_back({.at = plan.now + Minutes(60L * hour),
                         .temperature = celsius(8),
                         .humidity = humidity_percent(70)});
  AirMix mix{.file = "job.json", .sources = {{"forecast", rows, 1}, {"", months, 2}}};
  mix.indoors = Indoors{.time_constant = {hours(6), Origin::assumed, {}},
                        .heating = Heating{.set_point = celsius(18),
                                           .hours = {{0, 24 * 60}},
                                           .loss = {watts_per_kelvin(150), Origin::assumed, {}},
                                           .heater = {kilowatts(3), Origin::assumed, {}}}};
  mix.boards = Boards{.thickness = millimetres(20), .from_outdoors = true};
  plan.job.air = mix;
  Problems problems;
  plan.air = AirSeries::over(plan.job.air, plan.schedule.span, problems).value();
  nlohmann::ordered_json document;
  put_air(document, plan);
  const auto& air = document["air"];
  CHECK(air["kind"] == "mix");
  CHECK(air["sources"][1]["kind"] == "months");
  CHECK(air["seams"][0]["changes_at"] == iso_utc(plan.now + Minutes(20 * 60)));
  CHECK(air["seams"][0]["before"] == "forecast");
  CHECK(air["indoors"]["heating"]["energy_kwh"].get<double>() > 10);
  CHECK(air["indoors"]["heating"]["loss_origin"] == "assumed");
  CHECK(air["boards"]["from"] == "outdoors");
  CHECK(air["typical_from_at"] == iso_utc(plan.now + Minutes(20 * 60)));
}
