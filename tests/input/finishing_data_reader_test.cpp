#include "tackfree/input/finishing_data_reader.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("the built-in finishing data are read without a problem") {
  Problems problems;
  const auto data = read_finishing_data(std::nullopt, problems);
  for (const Problem& problem : problems) MESSAGE(to_text(problem));
  REQUIRE(data);
  CHECK(problems.empty());
  CHECK(data->classes.size() == 3);
}
