#include "tackfree/operations/unsanded_coats.hpp"

#include <doctest/doctest.h>

namespace tackfree {
namespace {

Operation coat_on(Side side) {
  Operation op;
  op.side = side;
  op.coating = 0;
  return op;
}

Operation sanding_of(Side side, bool spots) {
  Operation op;
  op.kind = OperationKind::repair;
  op.side = side;
  op.grit = Grit{320};
  op.spots = spots;
  return op;
}

TEST_CASE("a coat lies on the last one of its side, until all of that side is sanded") {
  UnsandedCoats<int> coats;
  CHECK_FALSE(coats.pass(coat_on(Side::back), 1));
  CHECK_FALSE(coats.pass(coat_on(Side::show), 2));
  CHECK(coats.pass(coat_on(Side::back), 3) == 1);
  coats.pass(sanding_of(Side::back, true), 0);
  CHECK(coats.pass(coat_on(Side::back), 4) == 3);
  coats.pass(sanding_of(Side::back, false), 0);
  CHECK_FALSE(coats.pass(coat_on(Side::back), 5));
  CHECK(coats.pass(coat_on(Side::show), 6) == 2);
  coats.pass(sanding_of(Side::both, false), 0);
  CHECK_FALSE(coats.pass(coat_on(Side::show), 7));
}

TEST_CASE("under a coat that is washed off lies what it was put on, bare wood under the first") {
  UnsandedCoats<int> coats;
  Operation wash;
  wash.kind = OperationKind::repair;
  wash.takes_off = true;
  coats.pass(coat_on(Side::both), 1);
  coats.pass(wash, 0);
  CHECK_FALSE(coats.pass(coat_on(Side::both), 2));
  coats.pass(coat_on(Side::both), 3);
  coats.pass(wash, 0);
  CHECK(coats.pass(coat_on(Side::both), 4) == 2);
  wash.done = Done{.skipped = true};
  coats.pass(wash, 0);
  CHECK(coats.pass(coat_on(Side::both), 5) == 4);
}

}  // namespace
}  // namespace tackfree
