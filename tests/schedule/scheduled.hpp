// Scheduled: a job taken through the stages up to its schedule, for tests.
#pragma once

#include "tackfree/operations/operation_list.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include "sample_job.hpp"

namespace tackfree::testing {

struct Scheduled {
  Job job;
  AirSeries air;
  OperationList list;
  Schedule schedule;

  const DatedStep* step(const std::string& key) const {
    for (const DatedStep& s : schedule.steps)
      if (list.operations[s.operation].key == key) return &s;
    return nullptr;
  }
};

/// The sample job with varnish that needs no sanding, recoated after 8 h, unsanded within `window`.
inline Job unsanded_job(Duration window) {
  Job job = sample_job();
  job.batches[0].sides = Sides::on_points;
  job.coatings[0].needs_sanding_between = false;
  job.coatings[0].recoat_unsanded_within = sourced(window, Origin::label);
  return job;
}

/// Planned from `now` (default: Monday 2027-04-05, 17:00 UTC) over the job's horizon.
inline Scheduled scheduled(Job job, const char* now = "2027-04-05T17:00Z") {
  const Instant from = instant(now);
  const Interval span{from, from + whole_minutes_up(job.horizon)};
  Problems problems;
  Scheduled result{std::move(job), AirSeries(), {}, {}};
  result.air = AirSeries::over(result.job.air, span, problems).value();
  const SurfaceTakeoff takeoff = take_off(result.job);
  result.list = operation_list(
      result.job, takeoff,
      job_volumes(result.job, takeoff, std::vector<double>(result.job.coatings.size(), 1.0)));
  result.schedule = make_schedule(result.job, result.list, result.air,
                                  drying_clocks(result.job, result.air), span);
  return result;
}

/// Hourly rows from `from`, each with the temperature that `celsius_at(hour of day)` gives.
template <class CelsiusAt>
AirRows daily_air(const char* from, int hour_count, double humidity, CelsiusAt celsius_at) {
  AirRows rows;
  rows.file = "air.csv";
  for (int h = 0; h < hour_count; ++h) {
    const Instant at = instant(from) + std::chrono::hours(h);
    rows.rows.push_back(
        {at, celsius(celsius_at(h % 24)), std::nullopt, humidity_percent(humidity), h + 2});
  }
  return rows;
}

}  // namespace tackfree::testing
