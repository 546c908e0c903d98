#include "tackfree/takeoff/features.hpp"

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

const Board board{millimetres(1000), millimetres(300), millimetres(20)};
constexpr FaceSet all_over{Face::top,  Face::bottom, Face::front,
                           Face::back, Face::left,   Face::right};

double mm2(Area area) { return area.in(square_metres)*1e6; }

double sum_on(const Feature& feature, Face face, Cut cut, const Board& in = board) {
  double sum = 0;
  for (const Patch& patch : feature_patches(feature, in))
    if (patch.face == face && patch.cut == cut) sum += mm2(patch.area);
  return sum;
}

double change(const Feature& feature, const Board& in = board) {
  double sum = 0;
  for (const Patch& patch : feature_patches(feature, in)) sum += mm2(patch.area);
  return sum;
}

Groove groove(Groove::Run run, double length_mm, bool masked = false) {
  return {.run = run,
          .length = millimetres(length_mm),
          .width = millimetres(6),
          .depth = millimetres(8),
          .masked = masked};
}

double tape(const Feature& feature, const FaceSet& coated = all_over) {
  return tape_on_board(feature, board, coated).in(millimetres);
}

/// A board of unit cubes from which boxes are cut out, and its surface by counting the faces of
/// cubes that have no neighbour: no formula of any feature is in it.
class CubeBoard {
 public:
  CubeBoard(int length, int width, int thickness)
      : size_{length, width, thickness},
        full_(static_cast<std::size_t>(length * width * thickness), true) {}

  struct Range {
    int from, to;
  };
  void cut(Range along, Range across, Range through) {
    for (int x = along.from; x < along.to; ++x)
      for (int y = across.from; y < across.to; ++y)
        for (int z = through.from; z < through.to; ++z) full_.at(at(x, y, z)) = false;
  }

  double surface() const {
    int faces = 0;
    for (int x = 0; x < size_[0]; ++x)
      for (int y = 0; y < size_[1]; ++y)
        for (int z = 0; z < size_[2]; ++z)
          if (is_full(x, y, z))
            faces += !is_full(x - 1, y, z) + !is_full(x + 1, y, z) + !is_full(x, y - 1, z) +
                     !is_full(x, y + 1, z) + !is_full(x, y, z - 1) + !is_full(x, y, z + 1);
    return faces;
  }

 private:
  std::size_t at(int x, int y, int z) const {
    return static_cast<std::size_t>((x * size_[1] + y) * size_[2] + z);
  }
  bool is_full(int x, int y, int z) const {
    if (x < 0 || y < 0 || z < 0 || x >= size_[0] || y >= size_[1] || z >= size_[2]) return false;
    return full_.at(at(x, y, z));
  }

  int size_[3];
  std::vector<bool> full_;
};

/// Whole numbers as the sizes of a board and of what is cut into it.
class Sizes {
 public:
  explicit Sizes(unsigned seed) : random_(seed) {}
  int from(int least, int most) { return std::uniform_int_distribution<int>(least, most)(random_); }

 private:
  std::mt19937 random_;
};

Length mm(int size) { return millimetres(size); }

}  // namespace

// Source of every closed form here: geometry.
TEST_CASE("a cut-out takes its opening off both faces and adds its girth times the thickness") {
  const CutOut hole{.length = millimetres(120), .width = millimetres(35), .count = 2};
  CHECK(sum_on(hole, Face::top, Cut::face) == Approx(-2 * 120 * 35));
  CHECK(sum_on(hole, Face::bottom, Cut::face) == Approx(-2 * 120 * 35));
  CHECK(sum_on(hole, Face::top, Cut::along) == Approx(2 * 2 * 120 * 20));
  CHECK(sum_on(hole, Face::top, Cut::across) == Approx(2 * 2 * 35 * 20));
  CHECK(change(CutOut{millimetres(120), millimetres(35), 2, false}) == Approx(-4 * 120 * 35));
}

TEST_CASE("a hole takes its circle off both faces and adds its bore, half of it end grain") {
  const Hole hole{.diameter = millimetres(12), .count = 3};
  CHECK(sum_on(hole, Face::top, Cut::face) == Approx(-3 * std::numbers::pi * 36));
  CHECK(sum_on(hole, Face::bottom, Cut::face) == Approx(-3 * std::numbers::pi * 36));
  CHECK(sum_on(hole, Face::top, Cut::along) == Approx(3 * std::numbers::pi * 12 * 20 / 2));
  CHECK(sum_on(hole, Face::top, Cut::across) == Approx(3 * std::numbers::pi * 12 * 20 / 2));
}

TEST_CASE("a hole as wide as twice the board's thickness leaves the area alone") {
  // 2 x pi/4 d^2 off, pi d t on: equal when d = 2 t.
  CHECK(change(Hole{.diameter = millimetres(40)}) == Approx(0).scale(1000));
}

TEST_CASE("a groove along the grain shows long grain beside its run and end grain at its stops") {
  const Groove stopped = groove(Groove::Run::with_length, 400);
  CHECK(sum_on(stopped, Face::top, Cut::along) == Approx(2 * 400 * 8));
  CHECK(sum_on(stopped, Face::top, Cut::across) == Approx(2 * 6 * 8));
  const Groove open = groove(Groove::Run::with_length, 1000);
  CHECK(sum_on(open, Face::top, Cut::along) == Approx(2 * 1000 * 8));
  CHECK(sum_on(open, Face::left, Cut::across) == Approx(-6 * 8));
  CHECK(sum_on(open, Face::right, Cut::across) == Approx(-6 * 8));
}

TEST_CASE("a groove across the grain shows end grain beside its run and long grain at its stops") {
  const Groove stopped = groove(Groove::Run::with_width, 200);
  CHECK(sum_on(stopped, Face::top, Cut::across) == Approx(2 * 200 * 8));
  CHECK(sum_on(stopped, Face::top, Cut::along) == Approx(2 * 6 * 8));
  const Groove open = groove(Groove::Run::with_width, 300);
  CHECK(sum_on(open, Face::front, Cut::along) == Approx(-6 * 8));
}

TEST_CASE("a rebate that runs out takes its section off both ends and leaves all else alone") {
  const Rebate step{.face = Face::bottom,
                    .along = Face::back,
                    .length = millimetres(1000),
                    .width = millimetres(10),
                    .depth = millimetres(9)};
  CHECK(sum_on(step, Face::left, Cut::across) == Approx(-90));
  CHECK(sum_on(step, Face::right, Cut::across) == Approx(-90));
  CHECK(change(step) == Approx(-180));
  const Rebate across{.along = Face::left,
                      .length = millimetres(300),
                      .width = millimetres(10),
                      .depth = millimetres(9)};
  CHECK(sum_on(across, Face::front, Cut::along) == Approx(-90));
  CHECK(change(across) == Approx(-180));
}

TEST_CASE(
    "a stopped rebate adds its two end walls, end grain along an edge, long grain on an end") {
  Rebate step{.along = Face::front,
              .length = millimetres(400),
              .width = millimetres(10),
              .depth = millimetres(9)};
  CHECK(sum_on(step, Face::top, Cut::across) == Approx(180));
  CHECK(change(step) == Approx(180));
  step.along = Face::right;
  step.length = millimetres(100);
  CHECK(sum_on(step, Face::top, Cut::along) == Approx(180));
}

TEST_CASE("a masked rebate takes its floor off the face and its wall off the edge") {
  const Rebate step{.face = Face::bottom,
                    .along = Face::back,
                    .length = millimetres(1000),
                    .width = millimetres(10),
                    .depth = millimetres(9),
                    .masked = true};
  CHECK(sum_on(step, Face::bottom, Cut::face) == Approx(-10000));
  CHECK(sum_on(step, Face::back, Cut::along) == Approx(-9000));
  CHECK(tape(step) == Approx(2 * 1000));
}

TEST_CASE("a moulding's girth takes the place of the plain edge") {
  const Moulding profile{
      .along = Face::front, .length = millimetres(1000), .girth = millimetres(31)};
  CHECK(sum_on(profile, Face::front, Cut::along) == Approx(1000 * (31 - 20)));
  CHECK(change(profile) == Approx(11000));
  const Moulding half_round{
      .along = Face::left, .length = millimetres(300), .girth = millimetres(std::numbers::pi * 10)};
  CHECK(300 * 20 + sum_on(half_round, Face::left, Cut::across) ==
        Approx(std::numbers::pi * 10 * 300));
}

TEST_CASE("a mask takes its strip off its side, and a band off a round") {
  const Mask strip{.face = Face::top,
                   .run = Groove::Run::with_width,
                   .length = millimetres(300),
                   .width = millimetres(18),
                   .count = 2};
  CHECK(sum_on(strip, Face::top, Cut::face) == Approx(-2 * 300 * 18));
  CHECK(tape(strip) == Approx(2 * 2 * 300));
  const Mask tenon{.face = Face::side, .length = millimetres(40), .count = 2};
  CHECK(mm2(mask_patches(tenon, millimetres(30)).at(0).area) ==
        Approx(-2 * std::numbers::pi * 30 * 40));
  CHECK(tape_on_round(tenon, millimetres(30), {Face::side}).in(millimetres) ==
        Approx(2 * std::numbers::pi * 30));
  CHECK(tape_on_round(tenon, millimetres(30), {Face::left}) == Length{});
}

TEST_CASE("tape goes round the mouth of a stopped groove and along both sides of an open one") {
  CHECK(tape(groove(Groove::Run::with_length, 400, true)) == Approx(2 * 400 + 2 * 6));
  CHECK(tape(groove(Groove::Run::with_length, 1000, true)) == Approx(2 * 1000));
  CHECK(tape(groove(Groove::Run::with_length, 400, false)) == 0.0);
  CHECK(tape(groove(Groove::Run::with_length, 400, true), {Face::bottom}) == 0.0);
}

TEST_CASE("a groove as long as its board runs out even when the two were written in two units") {
  CHECK(runs_out(millimetres(1101.725), inches(43.375)));
  CHECK_FALSE(runs_out(millimetres(1101.7), inches(43.375)));
}

TEST_CASE("the surface of random boards with cut-outs is that of the cubes that are left") {
  Sizes sizes(11);
  for (int i = 0; i < 60; ++i) {
    const int l = sizes.from(6, 30), w = sizes.from(6, 20), t = sizes.from(1, 8);
    const int a = sizes.from(1, l - 2), b = sizes.from(1, w - 2);
    const int x = sizes.from(1, l - a - 1), y = sizes.from(1, w - b - 1);
    CubeBoard cubes(l, w, t);
    const double plain = cubes.surface();
    cubes.cut({x, x + a}, {y, y + b}, {0, t});
    CAPTURE(i);
    CHECK(change(CutOut{mm(a), mm(b)}, {mm(l), mm(w), mm(t)}) == Approx(cubes.surface() - plain));
  }
}

TEST_CASE("the surface of random boards with grooves is that of the cubes that are left") {
  Sizes sizes(12);
  for (int i = 0; i < 60; ++i) {
    const int l = sizes.from(6, 30), w = sizes.from(6, 20), t = sizes.from(2, 8);
    const bool stopped = i % 2 == 0, along = i % 4 < 2;
    const int run = along ? l : w, across = along ? w : l;
    const int length = stopped ? sizes.from(1, run - 2) : run;
    const int width = sizes.from(1, across - 2), depth = sizes.from(1, t - 1);
    const int from = stopped ? sizes.from(1, run - length - 1) : 0;
    const int beside = sizes.from(1, across - width - 1);
    CubeBoard cubes(l, w, t);
    const double plain = cubes.surface();
    const CubeBoard::Range lengthways{from, from + length}, sideways{beside, beside + width};
    cubes.cut(along ? lengthways : sideways, along ? sideways : lengthways, {0, depth});
    const Groove channel{.run = along ? Groove::Run::with_length : Groove::Run::with_width,
                         .length = mm(length),
                         .width = mm(width),
                         .depth = mm(depth)};
    CAPTURE(i);
    CHECK(change(channel, {mm(l), mm(w), mm(t)}) == Approx(cubes.surface() - plain));
  }
}

TEST_CASE("the surface of random boards with rebates is that of the cubes that are left") {
  Sizes sizes(13);
  for (int i = 0; i < 60; ++i) {
    const int l = sizes.from(6, 30), w = sizes.from(6, 20), t = sizes.from(2, 8);
    const bool stopped = i % 2 == 0, along = i % 4 < 2;
    const int run = along ? l : w, across = along ? w : l;
    const int length = stopped ? sizes.from(1, run - 2) : run;
    const int width = sizes.from(1, across - 1), depth = sizes.from(1, t - 1);
    const int from = stopped ? sizes.from(1, run - length - 1) : 0;
    CubeBoard cubes(l, w, t);
    const double plain = cubes.surface();
    const CubeBoard::Range lengthways{from, from + length}, sideways{0, width};
    cubes.cut(along ? lengthways : sideways, along ? sideways : lengthways, {0, depth});
    const Rebate step{.along = along ? Face::front : Face::left,
                      .length = mm(length),
                      .width = mm(width),
                      .depth = mm(depth)};
    CAPTURE(i);
    CHECK(change(step, {mm(l), mm(w), mm(t)}) == Approx(cubes.surface() - plain));
  }
}
