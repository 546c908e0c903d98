#include "tackfree/input/part_feature_reader.hpp"

#include "tackfree/input/parts_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

// A board of 1000 x 300 x 20 mm and a leg, then one feature row in one of them.
const std::string two_parts =
    "kind,part,batch,coat,length_mm,width_mm,thickness_mm,diameter_mm,depth_mm,girth_mm,face,along,"
    "run,quantity,masked\n"
    "board,top,a,all,1000,300,20,,,,,,,,\n"
    "round,leg,a,side,450,,,30,,,,,,,\n";

Feature read_feature(const std::string& row, std::size_t part = 0) {
  Problems problems;
  auto parts = parse_parts(two_parts + row + "\n", "p.csv", problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  REQUIRE(parts.at(part).features.size() == 1);
  return parts[part].features[0];
}

}  // namespace

TEST_CASE("a hole has its diameter and number") {
  const auto hole = std::get<Hole>(read_feature("hole,top,,,,,,12,,,,,,4,"));
  CHECK(hole.diameter == millimetres(12));
  CHECK(hole.count == 4);
  CHECK(hole.rim_coated);
}

TEST_CASE("a rebate runs along the whole of its edge or end unless it has a length") {
  const auto back = std::get<Rebate>(read_feature("rebate,top,,,,10,,,9,,bottom,back,,,yes"));
  CHECK(back.face == Face::bottom);
  CHECK(back.along == Face::back);
  CHECK(back.length == metres(1));
  CHECK(back.masked);
  const auto left = std::get<Rebate>(read_feature("rebate,top,,,,10,,,9,,,left,,,"));
  CHECK(left.length == millimetres(300));
  CHECK(left.face == Face::top);
  CHECK(std::get<Rebate>(read_feature("rebate,top,,,400,10,,,9,,,front,,,")).length ==
        millimetres(400));
}

TEST_CASE("a moulding has the girth of its profile") {
  const auto profile = std::get<Moulding>(read_feature("moulding,top,,,,,,,,31,,right,,,"));
  CHECK(profile.along == Face::right);
  CHECK(profile.girth == millimetres(31));
  CHECK(profile.length == millimetres(300));
}

TEST_CASE("a mask is a strip of a board's side or a band round a leg") {
  const auto strip = std::get<Mask>(read_feature("mask,top,,,,18,,,,,bottom,,width,2,"));
  CHECK(strip.face == Face::bottom);
  CHECK(strip.length == millimetres(300));
  CHECK(strip.width == millimetres(18));
  CHECK(strip.count == 2);
  CHECK(std::get<Mask>(read_feature("mask,top,,,40,20,,,,,front,,,,")).face == Face::front);
  const auto tenon = std::get<Mask>(read_feature("mask,leg,,,40,,,,,,,,,,", 1));
  CHECK(tenon.face == Face::side);
  CHECK(tenon.length == millimetres(40));
}

TEST_CASE("a feature that does not fit its part is named with its remedy") {
  struct Row {
    const char* row;
    const char* key;
    const char* wanted;
  };
  const Row rows[] = {
      {"hole,top,,,,,,300,,,,,,,", "diameter_mm", "a rim must be left"},
      {"hole,leg,,,,,,3,,,,,,,", "part", "a hole in another kind of part is not known here"},
      {"rebate,top,,,,10,,,9,,,,,,", "along", "is empty; wanted the edge it runs along"},
      {"rebate,top,,,,10,,,20,,,front,,,", "depth_mm", "less than the board's thickness"},
      {"rebate,top,,,,300,,,9,,,front,,,", "width_mm", "less than the board is wide there"},
      {"rebate,top,,,301,10,,,9,,,left,,,", "length_mm", "no more than the run of the board"},
      {"rebate,top,,,,10,,,9,,,front,,2,", "quantity", "this field empty"},
      {"moulding,top,,,,,,,,19,,front,,,", "girth_mm", "at least the board's thickness"},
      {"moulding,top,,,,,,,,25,,top,,,", "along", "one of front, back, left, right"},
      {"mask,top,,,,,,,,,,,,,", "width_mm", "the width of the strip"},
      {"mask,top,,,,21,,,,,front,,,,", "width_mm", "no more than the board is wide there"},
      {"mask,top,,,,18,,,,,side,,,,", "face", "a side of a board"},
      {"mask,leg,,,,,,,,,,,,,", "length_mm", "how much of the length is masked"},
      {"mask,leg,,,451,,,,,,,,,,", "length_mm", "the length of the part"},
      {"mask,leg,,,40,10,,,,,,,,,", "width_mm", "goes all round"},
      {"mask,leg,,,40,,,,,,top,,,,", "face", "goes all round"},
      {"hole,top,,all,,,,12,,,,,,,", "coat", "goes with its part"}};
  for (const Row& each : rows) {
    INFO(std::string(each.row));
    Problems problems;
    parse_parts(two_parts + each.row + "\n", "p.csv", problems);
    INFO(all_text(problems));
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].line == 4);
    CHECK(problems[0].key == each.key);
    CHECK(holds(problems[0].wanted, each.wanted));
  }
}

TEST_CASE("an edge may not be masked or moulded over more than there is") {
  Problems problems;
  parse_parts(two_parts + "mask,top,,,,20,,,,,front,,,2,\n", "p.csv", problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 2);
  CHECK(holds(problems[0].wanted, "no more than its front"));
  problems.clear();
  parse_parts(two_parts + "moulding,top,,,,,,,,31,,front,,,\nmoulding,top,,,600,,,,,25,,front,,,\n",
              "p.csv", problems);
  REQUIRE(problems.size() == 1);
  CHECK(holds(problems[0].found, "1600 mm of moulding"));
}
