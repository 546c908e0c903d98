// What the drying clock costs: tabulating a year of hourly air for 20 coatings of 8 stages, a
// million look-ups, and the ratio to integrating minute by minute for each answer. Prints all of
// them, in time of the processor, which other programs do not lengthen, and of several runs the
// shortest. Run it from a release build. The air is invented: a yearly and a daily wave.
#include "tackfree/air/drying.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/input/finishing_data_reader.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <ctime>
#include <limits>
#include <numbers>
#include <vector>

#include <fmt/format.h>

using namespace tackfree;

namespace {

/// The shortest processor time that `work` took in `runs` runs.
template <class Work>
double milliseconds(int runs, const Work& work) {
  double shortest = std::numeric_limits<double>::max();
  for (int i = 0; i < runs; ++i) {
    const std::clock_t start = std::clock();
    work();
    shortest = std::min(shortest, 1000.0 * static_cast<double>(std::clock() - start) /
                                      static_cast<double>(CLOCKS_PER_SEC));
  }
  return shortest;
}

AirRows year_of_air(Instant begin) {
  AirRows rows;
  for (int hour = 0; hour <= 366 * 24; ++hour) {
    const double year = 2 * std::numbers::pi * hour / (365.25 * 24);
    const double day = 2 * std::numbers::pi * hour / 24;
    const double t = 15 - 9 * std::cos(year) - 5 * std::cos(day) + std::sin(hour * 0.37);
    rows.rows.push_back({.at = begin + Minutes(60L * hour),
                         .temperature = celsius(t),
                         .dew_point = celsius(t - 6 - 4 * std::sin(hour * 0.11)),
                         .humidity = std::nullopt});
  }
  return rows;
}

/// Twenty coatings of the built-in classes, each with a law a little of its own, so that none
/// shares.
std::vector<Coating> twenty_coatings(bool shared_laws) {
  const auto data = built_in_finishing_data();
  std::vector<Coating> coatings;
  for (std::size_t i = 0; i < 20; ++i) {
    coatings.push_back(data.classes[i % data.classes.size()]);
    if (!shared_laws) coatings.back().law.air_exponent.value += 0.001 * static_cast<double>(i);
  }
  return coatings;
}

/// One answer without a table: minute by minute from the application on.
Minutes naive_wait(const Coating& coating, Stage stage, const AirSeries& air, Instant applied) {
  const Speed speed = metres_per_second(0.10);
  const AirState label{coating.label_temperature,
                       vapour_pressure(coating.label_temperature, coating.label_humidity)};
  const double needed = coating.label_after.at(index_of(stage))
                            ->value.in(minutes)*drying_rate(coating.law, label, speed);
  double done = 0;
  double before = drying_rate(coating.law, air.at(applied), speed);
  Instant at = applied;
  while (done < needed && at < air.covers().end) {
    at += Minutes(1);
    const double after = drying_rate(coating.law, air.at(at), speed);
    done += (before + after) / 2;
    before = after;
  }
  return at - applied;
}

/// A million look-ups at times and coatings that are spread over the year, alike in each run; sums
/// something of each answer, so that none is left out.
std::int64_t look_up(const std::vector<DryingClock>& clocks, Instant begin) {
  std::uint64_t state = 1;
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < 1000000; ++i) {
    state = state * 6364136223846793005U + 1442695040888963407U;
    const auto minute = static_cast<std::int64_t>((state >> 33U) % (300U * 1440U));
    const auto reached = clocks[i % clocks.size()].reached(Stage::sand, begin + Minutes(minute));
    if (reached) sum += reached->time_since_epoch().count() & 1;
  }
  return sum;
}

}  // namespace

int main() {
  const Instant begin = parse_instant("2027-01-01T00:00Z").value();
  const Interval year{begin, begin + Minutes(365L * 1440)};
  Problems problems;
  const AirSeries air = AirSeries::over(year_of_air(begin), year, problems).value();
  const Speed speed = metres_per_second(0.10);

  for (const bool shared : {true, false}) {
    const auto coatings = twenty_coatings(shared);
    const double tabulated =
        milliseconds(5, [&] { (void)drying_clocks(coatings, air, speed, false); });
    fmt::print("a year of hourly air, all stages of {} coatings{}: {:.1f} ms\n", coatings.size(),
               shared ? "" : " of as many laws", tabulated);
  }

  const auto coatings = twenty_coatings(false);
  const auto clocks = drying_clocks(coatings, air, speed, false);
  std::int64_t sum = 0;
  const double looked_up = milliseconds(5, [&] { sum += look_up(clocks, begin); });
  fmt::print("a million look-ups among {} laws: {:.1f} ms (check {})\n", clocks.size(), looked_up,
             sum);

  constexpr int answers = 400;
  const auto applied_at = [&](int i) { return begin + Minutes(1009L * i); };
  const auto coating_of = [&](int i) { return static_cast<std::size_t>(i) % coatings.size(); };
  std::vector<Minutes> waits;
  const double naive = milliseconds(2, [&] {
    waits.clear();
    for (int i = 0; i < answers; ++i)
      waits.push_back(naive_wait(coatings[coating_of(i)], Stage::sand, air, applied_at(i)));
  });
  fmt::print("minute by minute for each answer: {:.4f} ms, {:.0f} times a look-up\n",
             naive / answers, (naive / answers) / (looked_up / 1e6));

  const auto free_clocks = drying_clocks(coatings, air, speed, true);
  std::int64_t worst = 0;
  for (int i = 0; i < answers; ++i) {
    const auto reached = free_clocks[coating_of(i)].reached(Stage::sand, applied_at(i));
    if (reached)
      worst = std::max(
          worst, std::abs((*reached - applied_at(i) - waits[static_cast<std::size_t>(i)]).count()));
  }
  fmt::print("largest difference of the two: {} min\n", worst);
}
