#include "tackfree/air/kept_limits.hpp"

#include "tackfree/air/psychrometrics.hpp"

namespace tackfree {

namespace {

constexpr TemperatureDifference rounding_off = kelvins(1e-6);
constexpr double rounding_factor = 1.0 + 1e-7;

}  // namespace

bool is_warm_enough(Temperature temperature, Temperature least) {
  return temperature + rounding_off >= least;
}

bool is_cool_enough(Temperature temperature, Temperature most) {
  return temperature - rounding_off <= most;
}

bool is_dry_enough(const AirState& air, Humidity most) {
  return relative_humidity(air.temperature, air.vapour) <= most * rounding_factor;
}

bool is_clear_of_dew(const AirState& air, Temperature surface, TemperatureDifference margin) {
  return air.vapour <= saturation_pressure(surface - margin) * rounding_factor;
}

}  // namespace tackfree
