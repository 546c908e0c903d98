// Temperature scale: where a temperature stands in a chart, in round steps of the person's unit.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// From a round step under the coldest air or dew point of the course to one over its warmest.
class TemperatureScale {
 public:
  struct Span {
    double top = 0, bottom = 0;
  };
  TemperatureScale(const Plan& plan, const Figures& figures, Span span);

  double y(Temperature t) const;  ///< inside the span
  bool shows(Temperature t) const { return coldest_ <= t && t <= warmest_; }
  double top() const { return span_.top; }
  double bottom() const { return span_.bottom; }
  const std::vector<Temperature>& steps() const { return steps_; }

 private:
  Span span_;
  Temperature coldest_, warmest_;
  std::vector<Temperature> steps_;
};

/// `50`: a mark of the scale, in the unit that its title names.
std::string scale_number(Temperature t, const Figures& figures);
/// `50 °F`, in one unit only.
std::string scale_words(Temperature t, const Figures& figures);

}  // namespace tackfree
