#include "tackfree/cli/gone_options.hpp"

#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("an option that is gone names what replaces it, and others are let through") {
  for (const char* gone : {"--work-calendar", "--waits-calendar=waits.ics"}) {
    const auto mistake = gone_option({"plan", "job.json", gone});
    REQUIRE(mistake);
    CHECK(mistake->find("wanted --calendar FILE") != std::string::npos);
    CHECK(mistake->find("--calendar-of NAME") != std::string::npos);
  }
  CHECK_FALSE(gone_option({"plan", "job.json", "--calendar", "work-calendar"}));
}

}  // namespace tackfree
