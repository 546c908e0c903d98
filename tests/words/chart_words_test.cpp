#include "tackfree/words/chart_words.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("marks of a tenfold scale are written out, without needless digits") {
  CHECK(tenfold_mark(0.01) == "0.01");
  CHECK(tenfold_mark(1) == "1");
  CHECK(tenfold_mark(1000) == "1000");
  CHECK(tenfold_mark(1000000) == "1000000");
}
