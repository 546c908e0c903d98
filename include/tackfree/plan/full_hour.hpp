// Full hour: to which it is told when something is ready; the minutes before it promise too much.
#pragma once

#include "tackfree/base/time.hpp"

namespace tackfree {

/// The next full hour of the local clock, or `at` itself when it is one.
Instant full_hour_up(Instant at, const Zone& zone);

}  // namespace tackfree
