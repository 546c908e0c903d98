#include "tackfree/input/part_shape_reader.hpp"

#include "tackfree/input/parts_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

const std::string shape_head =
    "kind,part,batch,coat,material,wood,surface,length_mm,width_mm,thickness_mm,diameter_mm,"
    "inner_mm,profile_factor,stile_width_mm,rail_width_mm,panels,set_back_top_mm,"
    "set_back_bottom_mm,slats,slat_width_mm,slat_thickness_mm,area_m2,grain,estimate\n";

/// A shape_row with the fields that are named, such as `kind=board part=x length_mm=3`.
std::string shape_row(const std::string& fields) {
  std::string text;
  std::string columns = shape_head.substr(0, shape_head.size() - 1) + ",";
  while (!columns.empty()) {
    const std::string column = columns.substr(0, columns.find(','));
    columns.erase(0, column.size() + 1);
    const std::size_t at = (" " + fields).find(" " + column + "=");
    if (at != std::string::npos) {
      const std::size_t from = at + column.size() + 1;
      text += fields.substr(from, fields.find(' ', from) - from);
    }
    text += columns.empty() ? "\n" : ",";
  }
  return text;
}

Part read_shape(const std::string& fields) {
  Problems problems;
  auto parts = parse_parts(shape_head + shape_row("part=x batch=a " + fields), "p.csv", problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  REQUIRE(parts.size() == 1);
  return parts[0];
}

const std::string frame_keys =
    " coat=all length_mm=700 width_mm=450 thickness_mm=22 stile_width_mm=70 rail_width_mm=80 ";

}  // namespace

TEST_CASE("a sheet is a board of plywood or fibreboard") {
  const Part sheet = read_shape(
      "kind=sheet material=fibreboard coat=faces length_mm=600 width_mm=400 thickness_mm=18");
  CHECK(std::get<Board>(sheet.shape).width == millimetres(400));
  CHECK(sheet.material == Material::fibreboard);
}

TEST_CASE("wood and surface are read in words") {
  const Part board = read_shape(
      "kind=board wood=ring_porous surface=rough coat=top length_mm=600 width_mm=100 "
      "thickness_mm=18");
  CHECK(board.wood == Wood::ring_porous);
  CHECK(board.surface == WoodSurface::rough_sawn);
  CHECK(board.material == Material::solid_wood);
}

TEST_CASE("a tube's sides are its outside, inside and ends") {
  const Part tube =
      read_shape("kind=tube coat=outside+inside length_mm=300 diameter_mm=80 inner_mm=60");
  CHECK(std::get<Tube>(tube.shape).inner == millimetres(60));
  CHECK(tube.coated == FaceSet{Face::side, Face::inside});
}

TEST_CASE("a turned part has its profile factor") {
  const Part leg =
      read_shape("kind=turned coat=side length_mm=450 diameter_mm=60 profile_factor=0.93");
  CHECK(std::get<Turned>(leg.shape).profile_factor == Approx(0.93));
}

TEST_CASE("a framed panel has its frame, panels and set-backs; without them it is flush") {
  const Part door =
      read_shape("kind=framed panels=2 set_back_top_mm=6 set_back_bottom_mm=8" + frame_keys);
  const auto& panel = std::get<FramedPanel>(door.shape);
  CHECK(panel.frame.stile_width == millimetres(70));
  CHECK(panel.frame.rail_width == millimetres(80));
  CHECK(panel.panels == 2);
  CHECK(panel.set_back_top == millimetres(6));
  CHECK(panel.set_back_bottom == millimetres(8));
  const Part flush = read_shape("kind=framed" + frame_keys);
  CHECK(std::get<FramedPanel>(flush.shape).set_back_top == Length{});
  CHECK(std::get<FramedPanel>(flush.shape).panels == 1);
}

TEST_CASE("a louvre has its frame and slats") {
  const Part shutter =
      read_shape("kind=louvre slats=12 slat_width_mm=40 slat_thickness_mm=8" + frame_keys);
  const auto& louvre = std::get<Louvre>(shutter.shape);
  CHECK(louvre.slats == 12);
  CHECK(louvre.slat_width == millimetres(40));
  CHECK(louvre.slat_thickness == millimetres(8));
}

TEST_CASE("framed and louvred work without its sizes is estimated where that is asked for") {
  const std::string outside = " coat=faces length_mm=2000 width_mm=800 thickness_mm=40 ";
  const Part door = read_shape("kind=framed estimate=yes" + outside);
  CHECK_FALSE(std::get<EstimatedFrame>(door.shape).louvred);
  const Part shutter = read_shape("kind=louvre estimate=yes" + outside);
  CHECK(std::get<EstimatedFrame>(shutter.shape).louvred);
}

TEST_CASE("a plain area has a grain and the faces it is on") {
  const Part carving = read_shape("kind=area area_m2=0.35 grain=end coat=top");
  CHECK(std::get<PlainArea>(carving.shape).area == square_metres(0.35));
  CHECK(std::get<PlainArea>(carving.shape).grain == Grain::end);
  CHECK(carving.coated == FaceSet{Face::top});
}

TEST_CASE("sizes that cannot be are named with their remedy") {
  struct Row {
    std::string fields;
    const char* key;
    const char* wanted;
    const char* hint;
  };
  const Row rows[] = {
      {"kind=sheet coat=all length_mm=6 width_mm=4 thickness_mm=1", "material",
       "is empty; wanted plywood or fibreboard", ""},
      {"kind=sheet material=solid coat=all length_mm=6 width_mm=4 thickness_mm=1", "material",
       "one of plywood, fibreboard", ""},
      {"kind=board wood=ring coat=all length_mm=6 width_mm=4 thickness_mm=1", "wood",
       "one of close, ring_porous", ""},
      {"kind=tube coat=side length_mm=300 diameter_mm=80 inner_mm=60", "coat",
       "sides of a tube: all, outside, inside", "\"inside\""},
      {"kind=tube length_mm=300 diameter_mm=80 inner_mm=60", "coat", "is empty",
       "undersides and insides are not guessed"},
      {"kind=tube coat=all length_mm=300 diameter_mm=60 inner_mm=60", "inner_mm",
       "less than the diameter", ""},
      {"kind=turned coat=side length_mm=450 diameter_mm=60", "profile_factor",
       "is empty; wanted a number from 0.2 to 5", ""},
      {"kind=turned coat=side length_mm=450 diameter_mm=60 profile_factor=x", "profile_factor",
       "wanted a number", ""},
      {"kind=framed coat=all length_mm=7 width_mm=4 thickness_mm=2 rail_width_mm=1",
       "stile_width_mm", "is empty", "\"yes\" under estimate takes a published allowance"},
      {"kind=framed set_back_top_mm=12 set_back_bottom_mm=10" + frame_keys, "set_back_top_mm",
       "leave no panel", ""},
      {"kind=framed panels=8" + frame_keys, "rail_width_mm", "9 rails of it leave no opening", ""},
      {"kind=framed panels=0" + frame_keys, "panels", "from 1", ""},
      {"kind=framed coat=all length_mm=700 width_mm=140 thickness_mm=22 stile_width_mm=70 "
       "rail_width_mm=80",
       "stile_width_mm", "less than half the width", ""},
      {"kind=framed material=plywood" + frame_keys, "material", "one of solid", ""},
      {"kind=framed estimate=yes" + frame_keys, "rail_width_mm", "this field empty", ""},
      {"kind=louvre slat_width_mm=40 slat_thickness_mm=8" + frame_keys, "slats",
       "is empty; wanted how many", ""},
      {"kind=louvre slats=99 slat_width_mm=40 slat_thickness_mm=8" + frame_keys, "slats",
       "find room in the stiles", ""},
      {"kind=area coat=top", "area_m2", "is empty; wanted an area", ""},
      {"kind=area area_m2=1 coat=top wood=close", "wood", "this field empty", ""},
      {"kind=area area_m2=1 coat=top grain=edge", "grain", "one of face, long_edge", ""}};
  for (const Row& each : rows) {
    INFO(each.fields);
    Problems problems;
    parse_parts(shape_head + shape_row("part=x batch=a " + each.fields), "p.csv", problems);
    INFO(all_text(problems));
    REQUIRE(!problems.empty());
    CHECK(problems[0].line == 2);
    CHECK(problems[0].key == each.key);
    CHECK(holds(problems[0].wanted, each.wanted));
    CHECK(holds(problems[0].hint, each.hint));
  }
}
