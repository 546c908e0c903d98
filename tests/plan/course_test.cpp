#include "tackfree/plan/course.hpp"

#include "tackfree/plan/make_plan.hpp"

#include <algorithm>

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::instant;
using testing::sample_job;

Plan planned(Job job) {
  Problems problems;
  auto plan = make_plan(std::move(job), instant("2027-04-05T17:02Z"), problems);
  REQUIRE(plan);
  return std::move(*plan);
}

/// Sample air with cold nights: 20 C by day, 8 C by night.
Job with_cold_nights() {
  Job job = sample_job();
  AirRows rows;
  for (int hour = 0; hour < 70 * 24; ++hour) {
    const int of_day = hour % 24;
    rows.rows.push_back({.at = instant("2027-04-04T00:00Z") + Minutes(60 * hour),
                         .temperature = celsius(of_day >= 8 && of_day < 20 ? 20 : 8),
                         .humidity = humidity_percent(50)});
  }
  job.air = rows;
  return job;
}

TEST_CASE("the course runs from now to midnight after the last work or light use") {
  const Plan plan = planned(sample_job());
  const Course& course = plan.course;
  CHECK(course.days.begin == plan.now);
  CHECK(course.days.end >= *plan.schedule.ready_at);
  CHECK(course.days.end >= plan.schedule.steps.back().end());
  CHECK(plan.job.calendar.zone.local(course.days.end).minute_of_day == 0);
  CHECK(course.air.front().at == course.days.begin);
  CHECK(course.air.back().at == course.days.end);
  for (std::size_t i = 2; i < course.air.size(); ++i)
    CHECK(course.air[i].at - course.air[i - 1].at <= Minutes(60));
}

TEST_CASE("each day's low and high are those of its hours") {
  const Course course = planned(with_cold_nights()).course;
  REQUIRE(course.air_days.size() > 2);
  CHECK(course.air_days[1].low == celsius(8));
  CHECK(course.air_days[1].high == celsius(20));
  CHECK(course.air_days[1].dew_low < course.air_days[1].dew_high);
  for (const AirHour& hour : course.air)
    CHECK(hour.humidity.in(humidity_percent) == doctest::Approx(50).epsilon(0.001));
  CHECK(days_between(course.air_days.front().on, course.air_days.back().on) + 1 ==
        static_cast<int>(course.air_days.size()));
}

TEST_CASE("work and waits of a batch fill its line from now to light use without a gap") {
  const Plan plan = planned(with_cold_nights());
  std::vector<Interval> line;
  for (const DatedStep& step : plan.schedule.steps)
    line.insert(line.end(), step.pieces.begin(), step.pieces.end());
  for (const WaitSpan& wait : plan.course.waits) line.push_back(wait.time);
  std::ranges::sort(line);
  Instant until = plan.now;
  for (const Interval& one : line) {
    CHECK(one.begin <= until);
    until = std::max(until, one.end);
  }
  CHECK(until >= *plan.schedule.ready_at);
}

TEST_CASE("a batch waits for one thing at a time") {
  const std::vector<WaitSpan> waits = planned(with_cold_nights()).course.waits;
  REQUIRE(waits.size() > 2);
  for (std::size_t i = 1; i < waits.size(); ++i) {
    CHECK(waits[i].time.begin >= waits[i - 1].time.end);
    CHECK(waits[i].time.begin < waits[i].time.end);
  }
}

TEST_CASE(
    "a wait for drying ends when the coat is dry, and what is left waits for something else") {
  const Plan plan = planned(sample_job());
  for (const WaitSpan& wait : plan.course.waits) {
    if (wait.by != HeldBy::drying) continue;
    // Reasons hold until a slot of the grid, stages are reached to the minute.
    const bool ends_dry = std::ranges::any_of(plan.schedule.steps, [&](const DatedStep& step) {
      return std::ranges::any_of(step.reaches, [&](const auto& at) {
        return at && *at <= wait.time.end && wait.time.end - *at < plan.job.grid;
      });
    });
    const bool ends_at_work = std::ranges::any_of(
        plan.schedule.steps, [&](const DatedStep& step) { return step.begin() == wait.time.end; });
    CHECK((ends_dry || ends_at_work));
  }
}

TEST_CASE("drying goes from nothing to all of it, and slower in the cold night") {
  const Plan plan = planned(with_cold_nights());
  REQUIRE_FALSE(plan.course.drying.empty());
  for (const DryingCourse& drying : plan.course.drying) {
    CHECK(drying.done.front() == 0);
    CHECK(drying.done.back() == doctest::Approx(1));
    CHECK(std::ranges::is_sorted(drying.done));
    const DatedStep& step = plan.schedule.steps.at(drying.dated_step);
    CHECK(drying.time.end == step.reaches.at(index_of(drying.towards)));
  }
  // What one hour does of a whole, over what the hour before did of it.
  const auto gain_over_hour_before = [&](int hour) -> double {
    for (const DryingCourse& drying : plan.course.drying)
      for (std::size_t i = 2; i + 1 < drying.done.size(); ++i)
        if (plan.job.calendar.zone.local(drying.time.begin + Minutes(60 * i)).minute_of_day / 60 ==
            hour)
          return (drying.done[i] - drying.done[i - 1]) / (drying.done[i - 1] - drying.done[i - 2]);
    return -1;
  };
  // It cools from 20 C to 8 C between 19:00 and 20:00, and warms between 7:00 and 8:00.
  CHECK(gain_over_hour_before(20) < 0.9);
  CHECK(gain_over_hour_before(20) > 0);
  CHECK(gain_over_hour_before(8) > 1.1);
  CHECK(gain_over_hour_before(3) == doctest::Approx(1).epsilon(0.02));
}

TEST_CASE("air below the least temperature for putting on is unfit, the rest is not") {
  const Plan plan = planned(with_cold_nights());
  REQUIRE(plan.course.unfit.size() == 1);
  const auto unfit_at = [&](const char* time) {
    return std::ranges::any_of(plan.course.unfit[0].times, [&](const Interval& one) {
      return one.begin <= instant(time) && instant(time) < one.end;
    });
  };
  CHECK(unfit_at("2027-04-06T03:00Z"));
  CHECK_FALSE(unfit_at("2027-04-06T13:00Z"));
  for (const UnfitAir& unfit : planned(sample_job()).course.unfit) CHECK(unfit.times.empty());
}

}  // namespace
}  // namespace tackfree
