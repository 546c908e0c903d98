// Drying track: how far each coat of one batch has dried, as hills along the days.
#pragma once

#include "tackfree/html/days_axis.hpp"

#include <cstddef>
#include <string>

namespace tackfree {

/// The coat that dries.
const Operation& dried_operation(const Plan& plan, const DryingCourse& course);
/// `coat 2 back`
std::string coat_mark(const Operation& op);

/// The batch's name, its coats and what they reach, and below them a hill for each: full height is
/// what the next work waits for, dots are earlier stages. Returns what it takes from `y` on, which
/// is nothing where none of its coats dries in these days.
double write_drying_track(Markup& svg, const DaysAxis& strip, const Plan& plan, std::size_t batch,
                          double y);

}  // namespace tackfree
