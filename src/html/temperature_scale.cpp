#include "tackfree/html/temperature_scale.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

TemperatureScale::TemperatureScale(const Plan& plan, const Figures& figures, Span span)
    : span_(span) {
  double low = 1e9, high = -1e9;
  const bool fahrenheit = figures.in_fahrenheit();
  const auto number = [&](Temperature t) {
    return fahrenheit ? t.in_fahrenheit() : t.in_celsius();
  };
  for (const AirHour& hour : plan.course.air) {
    low = std::min(low, number(hour.dew_point));
    high = std::max(high, number(hour.temperature));
  }
  if (low > high) low = high = number(celsius(20));
  const double step = fahrenheit ? 10 : high - low > 25 ? 10 : 5;
  low = std::floor(low / step) * step;
  high = std::max(low + step, std::ceil(high / step) * step);
  const auto at = [&](double value) {
    return fahrenheit ? tackfree::fahrenheit(value) : celsius(value);
  };
  coldest_ = at(low);
  warmest_ = at(high);
  const int count = static_cast<int>(std::lround((high - low) / step));
  for (int i = 0; i <= count; ++i) steps_.push_back(at(low + step * i));
}

double TemperatureScale::y(Temperature t) const {
  const double share = (t - coldest_).in(kelvins) / (warmest_ - coldest_).in(kelvins);
  return span_.bottom - (span_.bottom - span_.top) * std::clamp(share, 0.0, 1.0);
}

std::string scale_number(Temperature t, const Figures& figures) {
  return figures.temperature(t).number;
}

std::string scale_words(Temperature t, const Figures& figures) {
  const Figure figure = figures.temperature(t);
  return figure.number + " " + figure.unit;
}

}  // namespace tackfree
