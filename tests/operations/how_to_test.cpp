#include "tackfree/operations/how_to.hpp"

#include <doctest/doctest.h>

namespace tackfree {
namespace {

TEST_CASE("the most telling text wins: place and class, class, place, kind") {
  TradeTexts texts;
  texts.how = {{"coat", {"any"}},
               {"coat_first", {"first of any"}},
               {"coat/shellac", {"shellac"}},
               {"coat_last/shellac", {"last of shellac"}},
               {"dust_off", {"dust"}}};
  Operation coat;
  coat.kind = OperationKind::coat;
  coat.coats = 3;
  auto line = [&](int number, const char* class_key) {
    coat.coat = number;
    return how_to(texts, coat, class_key).at(0);
  };
  CHECK(line(1, "shellac") == "shellac");
  CHECK(line(2, "shellac") == "shellac");
  CHECK(line(3, "shellac") == "last of shellac");
  CHECK(line(1, "oil") == "first of any");
  CHECK(line(2, "oil") == "any");
  Operation dust;
  dust.kind = OperationKind::dust_off;
  CHECK(how_to(texts, dust, "shellac").at(0) == "dust");
  dust.kind = OperationKind::turn_over;
  CHECK(how_to(texts, dust, "shellac").empty());
}

}  // namespace
}  // namespace tackfree
