#include "tackfree/words/figures.hpp"

#include "tackfree/base/elementary.hpp"
#include "tackfree/plan/full_hour.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr int minutes_of_hour = 60;
constexpr std::array<std::string_view, 7> weekdays{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

/// A number with exactly so many decimals, never `-0`.
std::string fixed(double value, int decimals) {
  return fmt::format("{:.{}f}", rounded(value, decimals), decimals);
}

/// A number with at most so many decimals: no zeros at the end.
std::string at_most(double value, int decimals) {
  std::string text = fixed(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

/// Two digits, rounded up, at least 1.
std::string two_digits_up(double number) {
  if (number <= 0) return "0";
  if (number <= 1) return "1";
  int digits = 1;
  while (number >= power_of_ten(digits)) ++digits;
  const double step = power_of_ten(digits - 2);
  return at_most(std::ceil(number / step - 1e-9) * step, 1);
}

struct ShownUnit {
  Unit<VolumeKind> unit;
  int decimals;
  const char* name;
};

ShownUnit shown_unit(VolumeUnit unit) {
  switch (unit) {
    case VolumeUnit::ml:
      return {millilitres, 0, "ml"};
    case VolumeUnit::l:
      return {litres, 2, "L"};
    case VolumeUnit::fl_oz:
      return {us_fluid_ounces, 1, "fl oz"};
    case VolumeUnit::qt:
      return {us_quarts, 2, "qt"};
    case VolumeUnit::gal:
      break;
  }
  return {us_gallons, 2, "gal"};
}

std::string days_text(Duration d) {
  constexpr double days_of_month = 365.25 / 12;
  if (d.in(days) >= 90) return at_most(d.in(days) / days_of_month, 1) + " months";
  const std::string number = at_most(d.in(days), 1);
  return number + (number == "1" ? " day" : " days");
}

VolumeUnit metric_volume_unit(Volume v) {
  return rounded(v.in(millilitres), 0) < 1000 ? VolumeUnit::ml : VolumeUnit::l;
}

VolumeUnit us_volume_unit(Volume v) {
  if (rounded(v.in(us_fluid_ounces), 1) < 32) return VolumeUnit::fl_oz;
  return rounded(v.in(us_quarts), 2) < 4 ? VolumeUnit::qt : VolumeUnit::gal;
}

}  // namespace

double rounded(double value, int decimals) {
  const double scale = power_of_ten(decimals);
  // A trillionth of the value lets 0.285, held as 0.28499999999999998, round as it is written.
  const double scaled = std::abs(value) * scale * (1 + 1e-12);
  const double result = std::floor(scaled + 0.5) / scale;
  return result == 0 ? 0.0 : std::copysign(result, value);
}

Figures::Figures(const Job& job)
    : units_(job.units),
      clock_(job.clock_form()),
      week_begins_on_(job.week_begins_on.value_or(job.units == UnitSystem::us ? 6 : 0)),
      zone_(job.calendar.zone) {}

Figure Figures::chosen(Figure metric, const Figure& us) const {
  if (units_ == UnitSystem::us) return us;
  if (units_ == UnitSystem::both) metric.also = us.text();
  return metric;
}

Figure Figures::area(Area a) const {
  return chosen({fixed(a.in(square_metres), 2), "m\u00b2"}, {fixed(a.in(square_feet), 1), "sq ft"});
}

Figure Figures::length(Length l) const {
  return chosen(rounded(l.in(millimetres), 0) < 1000 ? Figure{fixed(l.in(millimetres), 0), "mm"}
                                                     : Figure{at_most(l.in(metres), 2), "m"},
                rounded(l.in(inches), 1) < 12 ? Figure{at_most(l.in(inches), 1), "in"}
                                              : Figure{at_most(l.in(feet), 1), "ft"});
}

Figure Figures::film(FilmThickness f) const {
  return chosen({fixed(f.in(micrometres), 0), "\u00b5m"}, {fixed(f.in(mils), 1), "mil"});
}

Figure Figures::spread(SpreadRate r) const {
  return chosen({at_most(r.in(square_metres_per_litre), 1), "m\u00b2/L"},
                {fixed(r.in(square_feet_per_us_gallon), 0), "sq ft/gal"});
}

Figure Figures::work_rate(WorkRate r) const {
  const Area each_hour = square_metres(r.in(square_metres_per_hour));
  return chosen({at_most(each_hour.in(square_metres), 1), "m\u00b2/h"},
                {fixed(each_hour.in(square_feet), 0), "sq ft/h"});
}

Figure Figures::air_speed(Speed s) const {
  return chosen({at_most(s.in(metres_per_second), 2), "m/s"},
                {fixed(s.in(metres_per_second)*60 / feet.si_per_unit(), 0), "ft/min"});
}

Figure Figures::density(MassPerVolume d) const { return {fixed(d.in(grams_per_litre), 0), "g/L"}; }

Figure Figures::mass(Mass m) const {
  return chosen({fixed(m.in(grams), 0), "g"}, rounded(m.in(ounces), 1) < 16
                                                  ? Figure{at_most(m.in(ounces), 1), "oz by weight"}
                                                  : Figure{at_most(m.in(pounds), 1), "lb"});
}

Figure Figures::room(Volume v) const {
  return chosen({at_most(v.in(cubic_metres), 1), "m\u00b3"}, {fixed(v.in(cubic_feet), 0), "cu ft"});
}

Figure Figures::air_flow(AirFlow f) const {
  return chosen({two_digits_up(f.in(cubic_metres_per_hour)), "m\u00b3/h"},
                {two_digits_up(f.in(cubic_feet_per_minute)), "cfm"});
}

Figure Figures::vapour(MassPerVolume v) const {
  return chosen({at_most(v.in(grams_per_cubic_metre), 1), "g/m\u00b3"},
                {at_most(v.in(ounces_per_1000_cubic_feet), 1), "oz/1000 cu ft"});
}

Figure Figures::exposure(MassPerVolume v) const {
  const double mg = v.in(milligrams_per_cubic_metre);
  return {at_most(mg, mg < 10 ? 1 : 0), "mg/m\u00b3"};
}

Figure Figures::temperature(Temperature t) const {
  return chosen({fixed(t.in_celsius(), 0), "\u00b0C"}, {fixed(t.in_fahrenheit(), 0), "\u00b0F"});
}

Figure Figures::temperature_difference(TemperatureDifference d) const {
  return chosen({at_most(d.in(kelvins), 1), "\u00b0C"},
                {at_most(d.in(fahrenheit_degrees), 1), "\u00b0F"});
}

VolumeUnit Figures::volume_unit(Volume v) const {
  return units_ == UnitSystem::us ? us_volume_unit(v) : metric_volume_unit(v);
}

Figure Figures::volume(Volume v, VolumeUnit unit) const {
  const ShownUnit shown = shown_unit(unit);
  return {fixed(v.in(shown.unit), shown.decimals), shown.name};
}

Figure Figures::volume_beside(Volume part, Volume whole, VolumeUnit unit) const {
  const ShownUnit shown = shown_unit(unit);
  const auto number = [&](Volume v) { return rounded(v.in(shown.unit), shown.decimals); };
  return {fixed(number(whole) - number(part), shown.decimals), shown.name};
}

Figure Figures::volume(Volume v) const {
  return chosen(volume(v, metric_volume_unit(v)), volume(v, us_volume_unit(v)));
}

std::string Figures::volume_both_ways(Volume v) const {
  if (units_ != UnitSystem::us) return volume(v).text();
  return fmt::format("{} ({})", volume(v).text(), volume(v, metric_volume_unit(v)).text());
}

std::string Figures::weekday_and_number(Date on) {
  return fmt::format("{} {}", weekdays.at(static_cast<std::size_t>(weekday_index(on))),
                     static_cast<unsigned>(on.day()));
}

std::string Figures::day_of(Date on) const {
  constexpr std::array months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                              "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const std::string_view weekday = weekdays.at(static_cast<std::size_t>(weekday_index(on)));
  const std::string_view month = months.at(static_cast<unsigned>(on.month()) - 1);
  const unsigned number = static_cast<unsigned>(on.day());
  return units_ == UnitSystem::us ? fmt::format("{} {} {}", weekday, month, number)
                                  : fmt::format("{} {} {}", weekday, number, month);
}

std::string Figures::day(Instant at) const { return day_of(local_date(at)); }

std::string Figures::day_and_year(Instant at) const {
  return fmt::format("{}{} {}", day(at), units_ == UnitSystem::us ? "," : "",
                     static_cast<int>(local_date(at).year()));
}

std::string Figures::clock_of_day(int minute_of_day) const {
  const int hour = minute_of_day / minutes_of_hour;
  const int minute = minute_of_day % minutes_of_hour;
  if (clock_ == ClockForm::hours_24) return fmt::format("{:02}:{:02}", hour, minute);
  if (minute == 0 && hour % 12 == 0) return hour == 12 ? "noon" : "midnight";
  const int shown = hour % 12 == 0 ? 12 : hour % 12;
  return fmt::format("{}:{:02} {}", shown, minute, hour < 12 ? "am" : "pm");
}

std::string Figures::clock(Instant at) const { return clock_of_day(zone_.local(at).minute_of_day); }

std::string Figures::clock_span(Interval time) const {
  constexpr std::size_t half_day = 3;  // " pm"
  std::string from = clock(time.begin);
  const std::string to = clock(time.end);
  const bool same_half = from.size() > half_day && to.size() > half_day &&
                         from.substr(from.size() - half_day) == to.substr(to.size() - half_day) &&
                         from.back() == 'm' && time.length() < Minutes(12 * minutes_of_hour);
  if (same_half) from.resize(from.size() - half_day);
  return fmt::format("{} to {}", from, to);
}

Instant Figures::full_hour_up(Instant at) const { return tackfree::full_hour_up(at, zone_); }

std::size_t Figures::clock_columns() const { return clock_ == ClockForm::hours_12 ? 8 : 5; }

std::string Figures::moment(Instant at) const { return day(at) + ", " + clock(at); }

std::string Figures::day_seen_from(Instant now, Instant at) const {
  const int ahead = days_between(local_date(now), local_date(at));
  if (ahead == 0) return "today";
  return ahead == 1 ? "tomorrow" : day(at);
}

std::string duration_text(Duration d) {
  return d.in(days) >= 2 ? days_text(d) : hours_text(whole_minutes_up(d));
}

std::string hours_text(Minutes work) {
  const auto hour = work.count() / minutes_of_hour;
  const auto minute = work.count() % minutes_of_hour;
  if (hour == 0) return fmt::format("{} min", minute);
  return minute == 0 ? fmt::format("{} h", hour) : fmt::format("{} h {} min", hour, minute);
}

std::string wait_text(Duration d) {
  if (rounded(d.in(hours), 0) >= 48) return days_text(d);
  if (d.in(hours) >= 5) return fixed(d.in(hours), 0) + " h";
  if (d.in(hours) >= 1) return at_most(d.in(hours), 1) + " h";
  return duration_text(d);
}

std::string hours_as_given(Duration d) { return fmt::format("{:g} h", d.in(hours)); }

std::string exact_hours_text(Duration d) { return fixed(d.in(hours), 2) + " h"; }

std::string exact_factor_text(double factor) { return fixed(factor, 3); }

std::string power_text(Power p) { return fmt::format("{:g} kW", p.in(kilowatts)); }

std::string energy_text(Energy e) { return fixed(e.in(kilowatt_hours), 0) + " kWh"; }

std::string heat_loss_text(HeatLoss l) { return fmt::format("{:g} W/K", l.in(watts_per_kelvin)); }

std::string percent_text(Fraction f) { return at_most(f.in(percent), 0) + " %"; }

std::string humidity_text(Humidity h) { return fixed(h.in(humidity_percent), 0) + " % RH"; }

std::string money_text(double amount) { return fixed(amount, 2); }

std::string factor_text(double factor) { return at_most(factor, 2); }

std::string count_text(double count) { return fmt::format("{:.0f}", std::ceil(rounded(count, 6))); }

std::string count_text(double count, std::string_view one, std::string_view many) {
  const std::string number = count_text(count);
  return fmt::format("{} {}", number, number == "1" ? one : many);
}

}  // namespace tackfree
