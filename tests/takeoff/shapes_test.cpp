#include "tackfree/takeoff/shapes.hpp"

#include <numbers>

#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

const Board board{
    .length = millimetres(1000), .width = millimetres(300), .thickness = millimetres(20)};

Groove groove(Groove::Run run, double length_mm) {
  Groove result;
  result.run = run;
  result.length = millimetres(length_mm);
  result.width = millimetres(6);
  result.depth = millimetres(8);
  return result;
}

double mm2(Area area) { return area.in(square_metres)*1e6; }

}  // namespace

TEST_CASE("a board's sides are the products of its measures") {
  CHECK(mm2(side_area(board, Face::top)) == Approx(300000));
  CHECK(mm2(side_area(board, Face::bottom)) == Approx(300000));
  CHECK(mm2(side_area(board, Face::front)) == Approx(20000));
  CHECK(mm2(side_area(board, Face::back)) == Approx(20000));
  CHECK(mm2(side_area(board, Face::left)) == Approx(6000));
  CHECK(mm2(side_area(board, Face::right)) == Approx(6000));
  CHECK(mm2(side_area(board, Face::side)) == 0.0);
}

TEST_CASE("a round has a cylinder's side and two circles, and no faces") {
  const Round leg{.length = millimetres(700), .diameter = millimetres(40)};
  CHECK(mm2(side_area(leg, Face::side)) == Approx(std::numbers::pi * 40 * 700));
  CHECK(mm2(side_area(leg, Face::left)) == Approx(std::numbers::pi * 20 * 20));
  CHECK(mm2(side_area(leg, Face::right)) == Approx(std::numbers::pi * 20 * 20));
  CHECK(mm2(side_area(leg, Face::top)) == 0.0);
  CHECK(mm2(side_area(leg, Face::front)) == 0.0);
}

TEST_CASE("the rim of a cut-out is its girth times the thickness") {
  const CutOut hole{.length = millimetres(120), .width = millimetres(35)};
  const Walls walls = rim(hole, millimetres(20));
  CHECK(mm2(walls.along_grain) == Approx(2 * 120 * 20));
  CHECK(mm2(walls.across_grain) == Approx(2 * 35 * 20));
  CHECK(mm2(opening(hole)) == Approx(120 * 35));
}

TEST_CASE("a groove along the grain shows long grain beside its run and end grain at its stops") {
  const Walls stopped = groove_walls(groove(Groove::Run::with_length, 400), board);
  CHECK(mm2(stopped.along_grain) == Approx(2 * 400 * 8));
  CHECK(mm2(stopped.across_grain) == Approx(2 * 6 * 8));
  const Walls open = groove_walls(groove(Groove::Run::with_length, 1000), board);
  CHECK(mm2(open.along_grain) == Approx(2 * 1000 * 8));
  CHECK(mm2(open.across_grain) == 0.0);
}

TEST_CASE("a groove across the grain shows end grain beside its run and long grain at its stops") {
  const Walls stopped = groove_walls(groove(Groove::Run::with_width, 200), board);
  CHECK(mm2(stopped.across_grain) == Approx(2 * 200 * 8));
  CHECK(mm2(stopped.along_grain) == Approx(2 * 6 * 8));
  CHECK(mm2(groove_walls(groove(Groove::Run::with_width, 300), board).along_grain) == 0.0);
}

TEST_CASE("a groove as long as its board runs out even when the two were written in two units") {
  const Board imperial{.length = inches(43.375), .width = inches(11), .thickness = inches(0.75)};
  CHECK(runs_out(groove(Groove::Run::with_length, 1101.725), imperial));
  CHECK_FALSE(runs_out(groove(Groove::Run::with_length, 1101.7), imperial));
  CHECK(runs_out(groove(Groove::Run::with_width, 279.4), imperial));
}

TEST_CASE("tape goes round the mouth of a stopped groove and along both sides of an open one") {
  CHECK(tape_around(groove(Groove::Run::with_length, 400), board).in(millimetres) ==
        Approx(2 * 400 + 2 * 6));
  CHECK(tape_around(groove(Groove::Run::with_length, 1000), board).in(millimetres) ==
        Approx(2 * 1000));
}

// Source: NIST SP 811, appendix B.6: 1 in = 25.4 mm exactly, 1 ft = 0.3048 m exactly.
TEST_CASE("a square foot is 0.09290304 square metres and 144 square inches") {
  CHECK(square_feet(1).in(square_metres) == Approx(0.09290304).epsilon(1e-12));
  CHECK((inches(12) * inches(12)).in(square_feet) == Approx(1.0).epsilon(1e-12));
}
