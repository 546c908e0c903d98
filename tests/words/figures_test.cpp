#include "tackfree/words/figures.hpp"

#include "tackfree/base/units.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Job job_in(UnitSystem units) {
  Job job;
  job.units = units;
  job.calendar.zone = *Zone::named("America/New_York");
  return job;
}

const Figures metric(job_in(UnitSystem::metric));
const Figures us(job_in(UnitSystem::us));

}  // namespace

TEST_CASE("numbers are rounded half up and are never minus nought") {
  CHECK(rounded(0.285, 2) == 0.29);
  CHECK(rounded(2.5, 0) == 3);
  CHECK(rounded(-2.5, 0) == -3);
  CHECK_FALSE(std::signbit(rounded(-0.001, 2)));
}

TEST_CASE("areas, lengths, films and rates are in the person's own units") {
  CHECK(metric.area(square_metres(2.4149)).text() == "2.41 m\u00b2");
  CHECK(us.area(square_feet(25.94)).text() == "25.9 sq ft");
  CHECK(metric.length(metres(2.4)).text() == "2.4 m");
  CHECK(metric.length(millimetres(999.6)).text() == "1 m");
  CHECK(us.length(inches(11.96)).text() == "1 ft");
  CHECK(us.length(inches(1.375)).text() == "1.4 in");
  CHECK(metric.film(micrometres(81.3)).text() == "81 \u00b5m");
  CHECK(us.film(micrometres(81.3)).text() == "3.2 mil");
  CHECK(us.spread(square_metres_per_litre(12.3)).text() == "501 sq ft/gal");
  CHECK(metric.spread(square_metres_per_litre(12.3)).text() == "12.3 m\u00b2/L");
}

TEST_CASE("temperatures and their differences are told apart") {
  CHECK(us.temperature(celsius(10)).text() == "50 \u00b0F");
  CHECK(us.temperature_difference(kelvins(3)).text() == "5.4 \u00b0F");
  CHECK(metric.temperature(celsius(-0.4)).text() == "0 \u00b0C");
}

TEST_CASE(
    "masses, rooms and vapour are in the person's own units, exposure in that of data sheets") {
  const Figures both(job_in(UnitSystem::both));
  CHECK(metric.mass(grams(153.4)).text() == "153 g");
  CHECK(us.mass(grams(153.4)).text() == "5.4 oz by weight");
  CHECK(us.mass(ounces(15.96)).text() == "1 lb");
  CHECK(us.mass(pounds(2.5)).text() == "2.5 lb");
  CHECK(metric.room(cubic_metres(38.52)).text() == "38.5 m\u00b3");
  CHECK(us.room(cubic_metres(90)).text() == "3178 cu ft");
  CHECK(both.room(cubic_metres(90)).text() == "90 m\u00b3 (3178 cu ft)");
  CHECK(metric.vapour(grams_per_cubic_metre(12.46)).text() == "12.5 g/m\u00b3");
  CHECK(us.vapour(grams_per_cubic_metre(40)).text() == "40 oz/1000 cu ft");
  CHECK(us.exposure(milligrams_per_cubic_metre(111.3)).text() == "111 mg/m\u00b3");
  CHECK(metric.exposure(milligrams_per_cubic_metre(0.37)).text() == "0.4 mg/m\u00b3");
}

TEST_CASE("flows are rounded up to two digits") {
  CHECK(metric.air_flow(cubic_metres_per_hour(123.4)).text() == "130 m\u00b3/h");
  CHECK(us.air_flow(cubic_metres_per_hour(123.4)).text() == "73 cfm");
  CHECK(us.air_flow(cubic_metres_per_hour(0.02)).text() == "1 cfm");
  CHECK(metric.air_flow(cubic_metres_per_hour(4.51)).text() == "4.6 m\u00b3/h");
  CHECK(metric.air_flow(AirFlow{}).text() == "0 m\u00b3/h");
}

TEST_CASE("two parts of a volume add up to it as shown") {
  // 3.35 and 0.335 alone would be shown as 3.3 and 0.3, of 3.7.
  CHECK(us.volume_beside(us_fluid_ounces(0.335), us_fluid_ounces(3.68), VolumeUnit::fl_oz).text() ==
        "3.4 fl oz");
  CHECK(metric.volume_beside(millilitres(27.3), millilitres(300.6), VolumeUnit::ml).text() ==
        "274 ml");
  CHECK(us.volume_beside(us_quarts(0.1), us_quarts(1.1), VolumeUnit::qt).text() == "1.00 qt");
}

TEST_CASE("a volume changes its unit where a person would, after rounding") {
  CHECK(metric.volume(millilitres(683.4)).text() == "683 ml");
  CHECK(metric.volume(millilitres(999.6)).text() == "1.00 L");
  CHECK(us.volume(us_fluid_ounces(5.34)).text() == "5.3 fl oz");
  CHECK(us.volume(us_fluid_ounces(31.96)).text() == "1.00 qt");
  CHECK(us.volume(us_quarts(3.997)).text() == "1.00 gal");
  CHECK(us.volume_both_ways(us_quarts(1.34)) == "1.34 qt (1.27 L)");
  CHECK(metric.volume_both_ways(litres(0.25)) == "250 ml");
}

TEST_CASE("durations and waits read as one says them") {
  CHECK(duration_text(minutes(40)) == "40 min");
  CHECK(duration_text(minutes(130)) == "2 h 10 min");
  CHECK(duration_text(minutes(59.2)) == "1 h");
  CHECK(duration_text(hours(47.5)) == "47 h 30 min");
  CHECK(duration_text(days(3)) == "3 days");
  CHECK(duration_text(hours(60)) == "2.5 days");
  CHECK(wait_text(hours(16.6)) == "17 h");
  CHECK(wait_text(hours(2.5)) == "2.5 h");
  CHECK(wait_text(minutes(30)) == "30 min");
  CHECK(wait_text(hours(47.8)) == "2 days");
}

TEST_CASE("dates and clock times are local and follow the person's habit") {
  const Instant evening = *parse_instant("2027-04-10T22:30:00Z");
  CHECK(metric.moment(evening) == "Sat 10 Apr, 18:30");
  CHECK(us.moment(evening) == "Sat Apr 10, 6:30 pm");
  CHECK(us.day_and_year(evening) == "Sat Apr 10, 2027");
  CHECK(metric.day_and_year(evening) == "Sat 10 Apr 2027");
  CHECK(us.clock_of_day(0) == "midnight");
  CHECK(us.clock_of_day(5) == "12:05 am");
  CHECK(us.clock_of_day(12 * 60) == "noon");
  CHECK(us.clock_of_day(12 * 60 + 30) == "12:30 pm");
  CHECK(metric.clock_of_day(1440) == "24:00");
  CHECK(us.clock_of_day(1440) == "midnight");
}

TEST_CASE("counts are rounded up and money has no currency") {
  CHECK(count_text(0.2, "sheet", "sheets") == "1 sheet");
  CHECK(count_text(2.0000000001, "sheet", "sheets") == "2 sheets");
  CHECK(money_text(24) == "24.00");
  CHECK(percent_text(percent(45)) == "45 %");
  CHECK(humidity_text(humidity_percent(80)) == "80 % RH");
  CHECK(factor_text(1.25) == "1.25");
}

TEST_CASE("work is told in hours however long it is") {
  CHECK(hours_text(Minutes(0)) == "0 min");
  CHECK(hours_text(Minutes(59)) == "59 min");
  CHECK(hours_text(Minutes(120)) == "2 h");
  CHECK(hours_text(Minutes(52 * 60 + 10)) == "52 h 10 min");
}

TEST_CASE("both units stand beside each other in sentences, metric first, and metric in tables") {
  const Figures both(job_in(UnitSystem::both));
  CHECK(both.area(square_feet(25.94)).text() == "2.41 m\u00b2 (25.9 sq ft)");
  CHECK(both.area(square_feet(25.94)).number == "2.41");
  CHECK(both.temperature(celsius(10)).text() == "10 \u00b0C (50 \u00b0F)");
  CHECK(both.volume(millilitres(683.4)).text() == "683 ml (23.1 fl oz)");
  CHECK(both.volume_both_ways(millilitres(683.4)) == "683 ml (23.1 fl oz)");
  CHECK(both.density(grams_per_litre(450)).text() == "450 g/L");
}

TEST_CASE("the clock and the week go as the job says, else as its units do") {
  const Instant evening = *parse_instant("2027-04-10T22:30:00Z");
  CHECK(metric.clock(evening) == "18:30");
  CHECK(metric.clock_span({evening, evening + Minutes(265)}) == "18:30 to 22:55");
  CHECK(us.clock_span({evening, evening + Minutes(265)}) == "6:30 to 10:55 pm");
  CHECK(us.clock_span({evening - Minutes(420), evening}) == "11:30 am to 6:30 pm");
  CHECK(us.clock(evening) == "6:30 pm");
  CHECK(metric.week_begins_on() == 0);
  CHECK(us.week_begins_on() == 6);
  Job job = job_in(UnitSystem::metric);
  job.clock = ClockForm::hours_12;
  job.week_begins_on = 6;
  CHECK(Figures(job).clock(evening) == "6:30 pm");
  CHECK(Figures(job).clock_columns() == 8);
  CHECK(Figures(job).week_begins_on() == 6);
  CHECK(Figures::weekday_and_number(parse_date("2027-04-10").value()) == "Sat 10");
}

TEST_CASE("hours, factors, power and heat are as exact as they are known") {
  CHECK(hours_as_given(hours(12)) == "12 h");
  CHECK(hours_as_given(minutes(150)) == "2.5 h");
  CHECK(exact_hours_text(minutes(50)) == "0.83 h");
  CHECK(exact_factor_text(1.2504) == "1.250");
  CHECK(power_text(kilowatts(1.5)) == "1.5 kW");
  CHECK(energy_text(kilowatt_hours(34.4)) == "34 kWh");
  CHECK(heat_loss_text(watts_per_kelvin(120)) == "120 W/K");
}
