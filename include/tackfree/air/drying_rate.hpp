// Drying rate: how fast a film dries in given air, by the law of its class or by its label's rows.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/model/coating.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// The air at one time, with the saturation pressure that nearly every law asks for: several
/// coatings in the same air share that work.
struct HumidAir {
  HumidAir(Temperature t, Pressure e);
  HumidAir(const AirState& state) : HumidAir(state.temperature, state.vapour) {}
  AirState state() const { return {temperature, vapour}; }
  /// Air as warm as this.
  HumidAir at_humidity(Humidity humidity) const;
  Temperature temperature;
  Pressure vapour;
  Pressure saturation;
};

/// How fast a film dries in `air`, relative to 23 C, 50 % RH, 0.10 m/s; 0 when it has stopped.
/// The film has the temperature of the air. See docs/formulas.md, "The drying clock".
double drying_rate(const DryingLaw& law, const HumidAir& air, Speed air_speed);

/// The same at the reference air speed, 0.10 m/s, for one law in many airs: what air does not
/// change is worked out once.
class ShelteredRate {
 public:
  explicit ShelteredRate(const DryingLaw& law);
  double operator()(const HumidAir& air) const { return warmth(air.temperature) * water(air); }
  /// The part of it that warmth alone makes; 0 when drying has stopped.
  double warmth(Temperature t) const;
  /// The part of it that the water in the air makes, with the saturation pressure that warmth
  /// brings.
  double water(const HumidAir& air) const;

 private:
  DryingLaw::Driver driver_;
  bool slowed_by_humidity_;
  Temperature stops_below_;
  double per_inverse_kelvin_ = 0;     ///< of ln rate: -activation energy over the gas constant
  std::optional<double> per_kelvin_;  ///< of ln rate, with a Q10
};

/// Factor of air speed: min(2, ((v + 0.05)/0.15)^n).
double air_speed_factor(double exponent, Speed air_speed);

/// The exponent by which a thicker film takes longer to this stage.
const Sourced<double>& film_exponent(const DryingLaw& law, Stage stage);

/// How many times as fast as on the label, in sheltered air.
struct DryingFactors {
  double temperature = 1.0;  ///< at the label's humidity
  double humidity = 1.0;     ///< the rest
  double both() const { return temperature * humidity; }
};

/// How fast one stage of one coating comes, relative to its label time. Under the label's
/// conditions both factors are 1. With rows at several temperatures the temperature factor is
/// theirs: ln of the hours is straight in 1/T between rows; outside, the law of the class goes on
/// from the nearest.
class StageRate {
 public:
  StageRate(const Coating& coating, Stage stage);

  DryingFactors factors(const HumidAir& air) const;
  /// Both factors.
  double relative(const HumidAir& air) const;
  /// Is `t` outside the label's rows? Never where there is only one label time.
  bool extrapolates(Temperature t) const;

 private:
  double law_at_label_humidity(Temperature t) const;
  double hours_by_rows(Temperature t, double by_law) const;

  ShelteredRate law_;
  Humidity label_humidity_;
  double label_rate_;               ///< of the law, at label temperature and humidity
  double label_hours_ = 0;          ///< of the stage; with rows alone
  std::vector<LabelPoint> points_;  ///< coldest first; empty: one label time
};

}  // namespace tackfree
