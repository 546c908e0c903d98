#include "tackfree/operations/operation.hpp"

#include <set>
#include <string>

#include <doctest/doctest.h>

namespace tackfree {
namespace {

TEST_CASE("every kind of operation has a name of its own") {
  std::set<std::string> names;
  for (const OperationKind kind :
       {OperationKind::sand_bare, OperationKind::raise_grain, OperationKind::sand_raised,
        OperationKind::dust_off, OperationKind::coat, OperationKind::turn_over,
        OperationKind::sand_between, OperationKind::fit_hardware})
    names.insert(std::string(word_for(kind)));
  CHECK(names.size() == 8);
  CHECK_FALSE(names.contains(""));
}

}  // namespace
}  // namespace tackfree
