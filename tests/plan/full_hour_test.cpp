#include "tackfree/plan/full_hour.hpp"

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("the full hour is that of the local clock") {
  const Zone new_york = *Zone::named("America/New_York");
  CHECK(full_hour_up(testing::instant("2027-04-10T10:52Z"), new_york) ==
        testing::instant("2027-04-10T11:00Z"));
  CHECK(full_hour_up(testing::instant("2027-04-10T11:00Z"), new_york) ==
        testing::instant("2027-04-10T11:00Z"));
  // Half an hour from UTC: https://data.iana.org/time-zones/ has Asia/Kolkata at +05:30.
  CHECK(full_hour_up(testing::instant("2027-04-10T10:52Z"), *Zone::named("Asia/Kolkata")) ==
        testing::instant("2027-04-10T11:30Z"));
}

}  // namespace tackfree
