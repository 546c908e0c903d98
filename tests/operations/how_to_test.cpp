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
  auto line = [&](int number, const char* class_key, const char* how_as = "") {
    Coating coating;
    coating.class_key = class_key;
    coating.words.how_as = how_as;
    coat.coat = number;
    return how_to(texts, coat, coating).at(0);
  };
  CHECK(line(1, "shellac") == "shellac");
  CHECK(line(2, "shellac") == "shellac");
  CHECK(line(3, "shellac") == "last of shellac");
  CHECK(line(1, "oil") == "first of any");
  CHECK(line(2, "oil") == "any");
  CHECK(line(3, "oil", "shellac") == "last of shellac");  // lines it borrows
  coat.step = 1;  // over the coats of an earlier step nothing goes in, nothing is thinned
  CHECK(line(1, "oil") == "any");
  Operation dust;
  dust.kind = OperationKind::dust_off;
  CHECK(how_to(texts, dust, Coating()).at(0) == "dust");
  dust.kind = OperationKind::turn_over;
  CHECK(how_to(texts, dust, Coating()).empty());
}

}  // namespace
}  // namespace tackfree
