// Figures: the only place that rounds: amounts, dates and times as a person reads them.
#pragma once

#include "tackfree/base/temperature.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"
#include "tackfree/model/job.hpp"

#include <string>
#include <string_view>

namespace tackfree {

/// A rounded number and its unit, apart so that tables can say the unit once in their head.
struct Figure {
  std::string number;
  std::string unit;
  std::string also;  ///< the same in the other system, where a job asks for both
  std::string text() const {
    return number + (unit.empty() ? "" : " " + unit) + (also.empty() ? "" : " (" + also + ")");
  }
};

/// Units of volume by size, so that amounts that are compared stand in the same one.
enum class VolumeUnit { ml, l, fl_oz, qt, gal };

/// Amounts, dates and clock times in the units and the zone of one job.
class Figures {
 public:
  explicit Figures(const Job& job);

  Figure area(Area a) const;      ///< 2.41 m² / 25.9 sq ft
  Figure length(Length l) const;  ///< 35 mm, 2.4 m / 1.4 in, 7.9 ft
  Figure film(FilmThickness f) const;
  Figure spread(SpreadRate r) const;
  Figure work_rate(WorkRate r) const;
  Figure air_speed(Speed s) const;
  Figure density(MassPerVolume d) const;   ///< 450 g/L in both systems, as labels have it
  Figure mass(Mass m) const;               ///< 153 g / 5.4 oz by weight, 2.5 lb
  Figure room(Volume v) const;             ///< 38.5 m³ / 1360 cu ft
  Figure air_flow(AirFlow f) const;        ///< 850 m³/h / 500 cfm, rounded up to two digits
  Figure vapour(MassPerVolume v) const;    ///< 12.5 g/m³ / 12.5 oz/1000 cu ft
  Figure exposure(MassPerVolume v) const;  ///< 350 mg/m³ in both systems, as data sheets have it
  Figure temperature(Temperature t) const;
  Figure temperature_difference(TemperatureDifference d) const;

  /// The unit in which a person would say this volume: below a quart fluid ounces, and so on.
  VolumeUnit volume_unit(Volume v) const;
  Figure volume(Volume v, VolumeUnit unit) const;
  Figure volume(Volume v) const;
  /// What `whole` has beside `part`: the three as shown add up.
  Figure volume_beside(Volume part, Volume whole, VolumeUnit unit) const;
  /// US: `23.1 fl oz (683 ml)`, as cups for mixing are marked both ways; metric: `683 ml`; both:
  /// `683 ml (23.1 fl oz)`.
  std::string volume_both_ways(Volume v) const;

  std::string day(Instant at) const;           ///< Sat 10 Apr / Sat Apr 10
  std::string day_and_year(Instant at) const;  ///< Sat 10 Apr 2027 / Sat Apr 10, 2027
  std::string clock(Instant at) const;         ///< 18:30 / 6:30 pm
  std::string moment(Instant at) const;        ///< day and clock
  /// `18:30 to 22:55`, `6:30 to 10:55 pm`: of one day, or of an evening and the night after it.
  std::string clock_span(Interval time) const;
  /// `today`, `tomorrow` or the day.
  std::string day_seen_from(Instant now, Instant at) const;
  /// The next full hour of the local clock, or `at` itself when it is one.
  Instant full_hour_up(Instant at) const;
  std::string clock_of_day(int minute_of_day) const;  ///< 0 to 1440
  std::size_t clock_columns() const;                  ///< columns that any clock time fits into
  Date local_date(Instant at) const { return zone_.local(at).on; }
  const Zone& zone() const { return zone_; }
  std::string day_of(Date on) const;                      ///< as day()
  static std::string weekday_and_number(Date on);         ///< Sat 10
  int week_begins_on() const { return week_begins_on_; }  ///< 0 Monday, 6 Sunday
  bool in_fahrenheit() const { return units_ == UnitSystem::us; }

 private:
  /// The figure in the units of the job.
  Figure chosen(Figure metric, const Figure& us) const;

  UnitSystem units_;
  ClockForm clock_;
  int week_begins_on_;
  Zone zone_;
};

/// `40 min`, `2 h 10 min`, `12 h`; from two days on `3 days`, `2.5 days`, from 90 on `12 months`. A
/// part of a minute counts as one.
std::string duration_text(Duration d);
/// Work in hours however many: `40 min`, `52 h 10 min`.
std::string hours_text(Minutes work);
/// A wait, as exact as it can be known: `40 min`, `17 h`, `3 days`.
std::string wait_text(Duration d);
/// As exact as a person gave it: `12 h`, `2.5 h`.
std::string hours_as_given(Duration d);
/// To the hundredth, as the parts of a sum: `12.00 h`.
std::string exact_hours_text(Duration d);
/// To the thousandth, as the parts of a product: `1.250`.
std::string exact_factor_text(double factor);
/// The same in both systems, as heaters are sold: `1.5 kW`, `34 kWh`, `120 W/K`.
std::string power_text(Power p);
std::string energy_text(Energy e);
std::string heat_loss_text(HeatLoss l);
/// `50 %`, without decimals.
std::string percent_text(Fraction f);
/// `80 % RH`
std::string humidity_text(Humidity h);
/// `24.00`, no currency.
std::string money_text(double amount);
/// A bare factor: `1.25`, at most two decimals.
std::string factor_text(double factor);
/// `3`: a count, rounded up.
std::string count_text(double count);
/// `1 session`, `3 sessions`.
std::string count_text(double count, std::string_view one, std::string_view many);
/// Rounded half away from nought to so many decimals; never -0.
double rounded(double value, int decimals);

}  // namespace tackfree
