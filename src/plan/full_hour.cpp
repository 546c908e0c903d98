#include "tackfree/plan/full_hour.hpp"

namespace tackfree {

Instant full_hour_up(Instant at, const Zone& zone) {
  const Minutes past{zone.local(at).minute_of_day % 60};
  return past == Minutes(0) ? at : at + (one_hour - past);
}

}  // namespace tackfree
