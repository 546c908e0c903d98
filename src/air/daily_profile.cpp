#include "tackfree/air/daily_profile.hpp"

#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <array>

namespace tackfree {

namespace {

constexpr int hours_in_day = 24;
/// Share of the daily range below the high, hours 1 to 24 of local standard time.
/// Source: ASHRAE Handbook Fundamentals 2017, ch. 14, table 6.
constexpr std::array<double, hours_in_day> below_high{
    0.88, 0.92, 0.95, 0.98, 1.00, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13,
    0.05, 0.00, 0.00, 0.06, 0.14, 0.24, 0.39, 0.50, 0.59, 0.68, 0.75, 0.82};

Pressure vapour_of(const DayRange& range) {
  if (range.dew_point) return saturation_pressure(*range.dew_point);
  return vapour_pressure(mean_temperature(range.low, range.high), range.humidity.value());
}

AirNode node_at(const AirDays::Day& day, int hour) {
  const Temperature t =
      temperature_at_hour(day.range.low, day.range.high, hour == 0 ? hours_in_day : hour);
  return {day.begins + hour * one_hour,
          {t, std::min(vapour_of(day.range), saturation_pressure(t))}};
}

Temperature between(Temperature a, Temperature b, double share) { return a + (b - a) * share; }

/// The way from one month's values to the next one's; water as vapour pressure, so that a dew point
/// and a humidity can meet.
DayRange between(const DayRange& a, const DayRange& b, double share) {
  const Pressure vapour = vapour_of(a) + (vapour_of(b) - vapour_of(a)) * share;
  return {.low = between(a.low, b.low, share),
          .high = between(a.high, b.high, share),
          .dew_point = dew_point(vapour),
          .humidity = std::nullopt,
          .line = a.line};
}

/// The typical values of a day; nothing where no month has any.
std::optional<DayRange> typical_on(const AirMonths& months, Date on) {
  constexpr int mid = 15;
  const auto month = static_cast<std::size_t>(static_cast<unsigned>(on.month()) - 1);
  const auto serving = month_serving(months, static_cast<unsigned>(on.month()));
  if (!serving) return std::nullopt;
  const DayRange& own = *months.months.at(*serving - 1);
  const Date middle = on.year() / on.month() / mid;
  const bool before = static_cast<unsigned>(on.day()) < mid;
  const auto beside = static_cast<unsigned>((month + (before ? 11 : 1)) % 12 + 1);
  const DayRange& other = *months.months.at(*month_serving(months, beside) - 1);
  const date::year_month next = on.year() / on.month() + date::months(before ? -1 : 1);
  const double share =
      static_cast<double>(days_between(middle, on)) / days_between(middle, next / mid);
  return between(own, other, share);
}

}  // namespace

Temperature temperature_at_hour(Temperature low, Temperature high, int hour) {
  return high - (high - low) * below_high.at(static_cast<std::size_t>(hour - 1));
}

Temperature mean_temperature(Temperature low, Temperature high) {
  double sum = 0;
  for (const double share : below_high) sum += share;
  return high - (high - low) * (sum / hours_in_day);
}

std::vector<AirNode> daily_nodes(const AirDays& lows_and_highs) {
  std::vector<AirNode> nodes;
  for (const AirDays::Day& day : lows_and_highs.days)
    for (int hour = nodes.empty() ? 0 : 1; hour <= hours_in_day; ++hour)
      nodes.push_back(node_at(day, hour));
  return nodes;
}

std::optional<unsigned> month_serving(const AirMonths& months, unsigned month) {
  const auto given = [&](unsigned index) { return months.months.at(index % 12).has_value(); };
  for (unsigned away = 0; away <= 6; ++away)
    for (const unsigned index : {month + 11 - away, month + 11 + away})
      if (given(index)) return index % 12 + 1;
  return std::nullopt;
}

AirDays typical_days(const AirMonths& months, Interval span) {
  AirDays typical;
  const Zone utc = Zone::utc();
  const LocalTime first = utc.local(span.begin + months.standard_offset);
  Instant begins = span.begin - Minutes(first.minute_of_day);
  for (Date on = first.on; begins < span.end; on = next_day(on), begins += one_day) {
    const auto range = typical_on(months, on);
    if (!range) break;
    typical.days.push_back({begins, *range});
  }
  return typical;
}

}  // namespace tackfree
