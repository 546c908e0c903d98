#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/plan/make_plan.hpp"

#include <cmath>
#include <functional>
#include <limits>

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

/// One coat on one board, in weather that the case gives; six days from a Monday on.
Job one_coat() {
  Job job = testing::sample_job();
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].coats = 1;
  job.data.labour.fit_hardware.value = Duration();
  for (auto& hours : job.calendar.weekly) hours = {{20 * 60, 21 * 60 + 30}};
  job.calendar.no_power_sanding.clear();
  job.horizon = days(6);
  CoatingLimits& limits = job.coatings[0].limits;
  limits.put_on_min.value = celsius(-10);
  limits.put_on_max.value = celsius(50);
  limits.hold_min.value = celsius(-10);
  limits.humidity_max.value = humidity_percent(99);
  limits.dew_point_margin.value = kelvins(0.1);
  return job;
}

constexpr const char* edge_now = "2027-04-05T17:00Z";

/// Hourly rows; `row` gives what differs from hour to hour.
AirRows rows_of(const std::function<AirRow(int hour_of_day)>& row) {
  AirRows rows;
  rows.file = "air.csv";
  for (int hour = 0; hour < 8 * 24; ++hour) {
    rows.rows.push_back(row(hour % 24));
    rows.rows.back().at = testing::instant("2027-04-05T00:00Z") + hour * one_hour;
  }
  return rows;
}

AirRows always(AirRow row) {
  return rows_of([&](int) { return row; });
}

AirRow humid_row(Temperature t, double percent) {
  return {.at = {}, .temperature = t, .dew_point = {}, .humidity = humidity_percent(percent)};
}

/// As a file in Fahrenheit has it.
Temperature by_fahrenheit(double in_celsius) { return fahrenheit(in_celsius * 9 / 5 + 32); }

/// Warm evenings, when the coat goes on, and nights of `night`.
AirRows nights_of(double night) {
  return rows_of([&](int hour) {
    return humid_row(hour > 11 && hour < 23 ? celsius(20) : by_fahrenheit(night), 40);
  });
}

/// A limit, and weather that keeps it by `to_spare`, in kelvins or in percent of humidity.
struct Edge {
  const char* limit;
  std::function<Job(double at, double to_spare)> job;
  std::vector<double> at;
};

Job with_air(Job job, AirRecord air) {
  job.air = std::move(air);
  return job;
}

const std::vector<Edge> edges{
    {"put-on minimum",
     [](double at, double to_spare) {
       Job job = one_coat();
       job.coatings[0].limits.put_on_min.value = celsius(at);
       return with_air(job, always(humid_row(by_fahrenheit(at + to_spare), 50)));
     },
     {12, 10, 18.3, 22, 15.55}},
    {"put-on maximum",
     [](double at, double to_spare) {
       Job job = one_coat();
       job.coatings[0].limits.put_on_max.value = celsius(at);
       return with_air(job, always(humid_row(by_fahrenheit(at - to_spare), 50)));
     },
     {12, 30, 18.3, 32.2, 21.5}},
    {"put-on minimum, of boards behind the air",
     [](double at, double to_spare) {
       Job job = one_coat();
       job.coatings[0].limits.put_on_min.value = celsius(at);
       AirMix mix;
       mix.sources = {{"rows", always(humid_row(by_fahrenheit(at + to_spare), 50)), 0}};
       mix.boards = Boards{millimetres(30), false};
       return with_air(job, mix);
     },
     {12, 18.3}},
    {"humidity",
     [](double at, double to_spare) {
       Job job = one_coat();
       job.coatings[0].limits.humidity_max.value = humidity_percent(at);
       return with_air(job, always(humid_row(celsius(20), at - to_spare)));
     },
     {80, 65, 84.9, 70.1}},
    {"dew point margin",
     [](double at, double to_spare) {
       Job job = one_coat();
       job.coatings[0].limits.dew_point_margin.value = kelvins(3);
       AirRow row{.at = {}, .temperature = celsius(at), .dew_point = celsius(at - 3 - to_spare)};
       return with_air(job, always(row));
     },
     {20, 22, 16, 18.3, 21.5, 19.9, 17.77}},
    {"dew point margin, in Fahrenheit",
     [](double at, double to_spare) {
       Job job = one_coat();
       job.coatings[0].limits.dew_point_margin.value = fahrenheit_degrees(5.4);
       AirRow row{.at = {},
                  .temperature = by_fahrenheit(at),
                  .dew_point = by_fahrenheit(at - 3 - to_spare)};
       return with_air(job, always(row));
     },
     {20, 22, 12, 17.77}},
    {"dew point margin, by the humidity",
     [](double at, double to_spare) {
       Job job = one_coat();
       job.coatings[0].limits.dew_point_margin.value = kelvins(3);
       const double humid =
           saturation_pressure(celsius(at - 3 - to_spare)) / saturation_pressure(celsius(at));
       return with_air(job, always(humid_row(celsius(at), humid * 100)));
     },
     {20, 22, 18.3}},
    {"hold minimum until touch-dry",
     [](double at, double to_spare) {
       Job job = one_coat();
       job.coatings[0].limits.hold_min.value = celsius(at);
       return with_air(job, nights_of(at + to_spare));
     },
     {12, 10, 8.3}},
    {"put-on minimum for some hours after",
     [](double at, double to_spare) {
       Job job = one_coat();
       job.coatings[0].limits.put_on_min.value = celsius(at);
       job.coatings[0].limits.hold_put_on_min = sourced(hours(24), Origin::label);
       return with_air(job, nights_of(at + to_spare));
     },
     {12, 10, 8.3}},
};

/// Does the plan date the coat? The planner's checker throws where the two do not agree.
bool goes_on(const Job& job) {
  Problems problems;
  const auto plan = make_plan(job, testing::instant(edge_now), problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  return plan && plan->schedule.unplaced.empty();
}

TEST_CASE("weather exactly on a limit keeps it, a hundredth beyond does not, checker and all") {
  for (const Edge& edge : edges)
    for (const double at : edge.at) {
      CAPTURE(edge.limit);
      CAPTURE(at);
      const double step = std::nextafter(at, 100.0) - at;
      for (const double to_spare : {0.0, step, -step, 0.01}) {
        CAPTURE(to_spare);
        CHECK_NOTHROW(CHECK(goes_on(edge.job(at, to_spare))));
      }
      CHECK_NOTHROW(CHECK_FALSE(goes_on(edge.job(at, -0.01))));
    }
}

/// Two coats of a varnish that is recoated unsanded within a window, one session a day.
Job windowed(Duration window, int evening, int spare_minutes) {
  Job job = testing::sample_job();
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].coats = 2;
  job.coatings[0].needs_sanding_between = false;
  job.coatings[0].recoat_unsanded_within = sourced(window, Origin::label);
  job.recoat_to_spare = minutes(spare_minutes);
  for (auto& hours : job.calendar.weekly) hours = {{evening, evening + 90}};
  job.horizon = days(8);
  return job;
}

TEST_CASE("a coat right at the end of the window below is in it, for planner and checker") {
  for (const double window : {23.9, 24.0, 24.1, 23.7, 24.3})
    for (const int spare : {0, 6, 42}) {
      CAPTURE(window);
      CAPTURE(spare);
      CHECK_NOTHROW(goes_on(windowed(hours(window), 18 * 60, spare)));
    }
}

}  // namespace
}  // namespace tackfree
