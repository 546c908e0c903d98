// What the drying clock costs: tabulating a year of hourly air for 20 coatings of 8 stages, a
// million look-ups, and the ratio to integrating minute by minute for each answer. Prints all of
// them. Run it from a release build. The air is invented: a yearly and a daily wave.
#include "tackfree/air/drying.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/input/finishing_data_reader.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <vector>

#include <fmt/format.h>

using namespace tackfree;

namespace {

using Clock = std::chrono::steady_clock;

double milliseconds_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
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
  Problems problems;
  const auto data = read_finishing_data(std::nullopt, problems).value();
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

}  // namespace

int main() {
  const Instant begin = parse_instant("2027-01-01T00:00Z").value();
  const Interval year{begin, begin + Minutes(365L * 1440)};
  Problems problems;
  const AirSeries air = AirSeries::over(year_of_air(begin), year, problems).value();
  const Speed speed = metres_per_second(0.10);

  double tabulated = 0;
  for (const bool shared : {true, false}) {
    const auto coatings = twenty_coatings(shared);
    const auto start = Clock::now();
    const auto clocks = drying_clocks(coatings, air, speed, false);
    tabulated = milliseconds_since(start);
    fmt::print("a year of hourly air, 20 coatings{}: {:.1f} ms for all stages of {}\n",
               shared ? "" : " of 20 different laws", tabulated, clocks.size());
  }

  const auto coatings = twenty_coatings(true);
  const auto clocks = drying_clocks(coatings, air, speed, false);
  constexpr int look_ups = 1000000;
  std::uint64_t state = 1;
  std::int64_t sum = 0;
  auto start = Clock::now();
  for (int i = 0; i < look_ups; ++i) {
    state = state * 6364136223846793005U + 1442695040888963407U;
    const auto minute = static_cast<std::int64_t>((state >> 33U) % (300U * 1440U));
    const auto reached =
        clocks[static_cast<std::size_t>(i) % 20].reached(Stage::sand, begin + Minutes(minute));
    if (reached) sum += reached->time_since_epoch().count() & 1;
  }
  const double looked_up = milliseconds_since(start);
  fmt::print("a million look-ups: {:.1f} ms (check {})\n", looked_up, sum);

  constexpr int naive_answers = 400;
  std::int64_t worst = 0;
  start = Clock::now();
  std::vector<Minutes> waits;
  for (int i = 0; i < naive_answers; ++i)
    waits.push_back(naive_wait(coatings[static_cast<std::size_t>(i) % 20], Stage::sand, air,
                               begin + Minutes(1009L * i)));
  const double naive = milliseconds_since(start);
  const auto free_clocks = drying_clocks(coatings, air, speed, true);
  for (int i = 0; i < naive_answers; ++i) {
    const Instant applied = begin + Minutes(1009L * i);
    const auto reached =
        free_clocks[static_cast<std::size_t>(i) % 20].reached(Stage::sand, applied);
    if (reached)
      worst = std::max<std::int64_t>(
          worst, std::abs(((*reached - applied) - waits[static_cast<std::size_t>(i)]).count()));
  }
  const double ratio = (naive / naive_answers) / (looked_up / look_ups);
  fmt::print("minute by minute for each answer: {:.4f} ms, {:.0f} times a look-up\n",
             naive / naive_answers, ratio);
  fmt::print("largest difference of the two: {} min\n", worst);
}
