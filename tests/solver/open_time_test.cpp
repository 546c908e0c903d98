#include "tackfree/solver/open_time.hpp"

#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

TEST_CASE("open time finds the next open slot and where it closes") {
  const OpenTime time({1, 1, 0, 0, 2, 0});
  CHECK(time.next_open(0) == 2);
  CHECK(time.next_open(3) == 3);
  CHECK(time.next_open(4) == 5);
  CHECK(time.next_open(6) == never);
  CHECK(time.next_open(-4) == 2);
  CHECK(time.open_until(2) == 4);
  CHECK(time.open_until(4) == 4);
  CHECK(time.open_until(5) == 6);
  for (Slot at = 0; at < time.horizon(); ++at) {
    Slot until = at + 1;
    while (until < time.horizon() && time.rule(until) == time.rule(at)) ++until;
    CHECK(time.same_rule_until(at) == until);
  }
  CHECK(time.rule(4) == 2);
  CHECK_FALSE(time.is_open(6));
  CHECK_FALSE(time.is_open(-1));
}

TEST_CASE("the first part of an open time closes where it ends") {
  const OpenTime time = OpenTime({1, 0, 0, 0, 2, 0}).until(3);
  CHECK(time.horizon() == 3);
  CHECK(time.next_open(0) == 1);
  CHECK(time.next_open(3) == never);
  CHECK(time.open_until(1) == 3);
  CHECK(OpenTime({1, 0}).until(9).horizon() == 2);
}

TEST_CASE("a horizon of nothing is never open") {
  const OpenTime time;
  CHECK(time.next_open(0) == never);
  CHECK(time.horizon() == 0);
}

}  // namespace
}  // namespace tackfree::solver
