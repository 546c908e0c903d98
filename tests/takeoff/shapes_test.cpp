#include "tackfree/takeoff/shapes.hpp"

#include <cmath>
#include <functional>
#include <numbers>
#include <random>
#include <string>

#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

constexpr double pi = std::numbers::pi;

double in_mm2(Area area) { return area.in(square_metres)*1e6; }

double on(const Shape& shape, Face face) {
  double sum = 0;
  for (const Patch& patch : patches(shape))
    if (patch.face == face) sum += in_mm2(patch.area);
  return sum;
}

double of_cut(const Shape& shape, Face face, Cut cut) {
  double sum = 0;
  for (const Patch& patch : patches(shape))
    if (patch.face == face && patch.cut == cut) sum += in_mm2(patch.area);
  return sum;
}

double whole(const Shape& shape) {
  double sum = 0;
  for (const Patch& patch : patches(shape)) sum += in_mm2(patch.area);
  return sum;
}

Frame frame(double length, double width, double thickness, double stile, double rail) {
  return {.length = millimetres(length),
          .width = millimetres(width),
          .thickness = millimetres(thickness),
          .stile_width = millimetres(stile),
          .rail_width = millimetres(rail)};
}

/// Surface of revolution of a radius over [0, length], in in_mm2: a great many triangles, each pair
/// between two rings of `facets` points, by the cross product of their sides. It knows neither pi
/// nor a formula for cones, so it is independent of what it checks.
double triangulated(const std::function<double(double)>& radius, double length) {
  constexpr int rings = 1500;
  constexpr int facets = 720;
  struct Point {
    double x, y, z;
  };
  const auto at = [&](int ring, int facet) {
    const double x = length * ring / rings;
    const double angle = 4 * std::acos(0.0) * facet / facets;
    return Point{x, radius(x) * std::cos(angle), radius(x) * std::sin(angle)};
  };
  const auto triangle = [](Point a, Point b, Point c) {
    const Point u{b.x - a.x, b.y - a.y, b.z - a.z};
    const Point v{c.x - a.x, c.y - a.y, c.z - a.z};
    return std::hypot(u.y * v.z - u.z * v.y, u.z * v.x - u.x * v.z, u.x * v.y - u.y * v.x) / 2;
  };
  double sum = 0;
  // All facets of a ring are alike.
  for (int ring = 0; ring < rings; ++ring) {
    const Point a = at(ring, 0), b = at(ring, 1), c = at(ring + 1, 0), d = at(ring + 1, 1);
    sum += facets * (triangle(a, b, c) + triangle(b, c, d));
  }
  return sum;
}

/// The chords of 720 facets and 1500 rings fall short of the round by less than this share.
constexpr double of_facets = 2e-5;

}  // namespace

// Source of every closed form here: geometry.
TEST_CASE("a board's sides are the products of its measures") {
  const Board board{millimetres(1000), millimetres(300), millimetres(20)};
  CHECK(on(board, Face::top) == Approx(300000));
  CHECK(on(board, Face::bottom) == Approx(300000));
  CHECK(on(board, Face::front) == Approx(20000));
  CHECK(on(board, Face::back) == Approx(20000));
  CHECK(on(board, Face::left) == Approx(6000));
  CHECK(on(board, Face::right) == Approx(6000));
  CHECK(on(board, Face::side) == 0.0);
  CHECK(of_cut(board, Face::left, Cut::across) == Approx(6000));
  CHECK(of_cut(board, Face::front, Cut::along) == Approx(20000));
}

TEST_CASE("a round has a cylinder's side and two circles, and no faces") {
  const Round leg{.length = millimetres(700), .diameter = millimetres(40)};
  CHECK(on(leg, Face::side) == Approx(pi * 40 * 700));
  CHECK(on(leg, Face::left) == Approx(pi * 20 * 20));
  CHECK(on(leg, Face::right) == Approx(pi * 20 * 20));
  CHECK(on(leg, Face::top) == 0.0);
  CHECK(on(leg, Face::front) == 0.0);
}

TEST_CASE("a tube has an outside, an inside and two rings") {
  const Tube tube{millimetres(300), millimetres(80), millimetres(60)};
  CHECK(on(tube, Face::side) == Approx(pi * 80 * 300));
  CHECK(on(tube, Face::inside) == Approx(pi * 60 * 300));
  CHECK(on(tube, Face::left) == Approx(pi * (40 * 40 - 30 * 30)));
  CHECK(on(tube, Face::right) == Approx(pi * (40 * 40 - 30 * 30)));
}

TEST_CASE("rounds and tubes have the area of the triangles that span them") {
  const auto cylinder = [](double) { return 40.0; };
  const auto bore = [](double) { return 30.0; };
  const Tube tube{millimetres(300), millimetres(80), millimetres(60)};
  CHECK(on(tube, Face::side) == Approx(triangulated(cylinder, 300)).epsilon(of_facets));
  CHECK(on(tube, Face::inside) == Approx(triangulated(bore, 300)).epsilon(of_facets));
  CHECK(on(Round{millimetres(300), millimetres(80)}, Face::side) ==
        Approx(triangulated(cylinder, 300)).epsilon(of_facets));
}

// The factors that docs/file_formats.md tells a person to write, from the integral over the
// profile.
TEST_CASE("a turned side is its cylinder's times the factor, as the profile's integral has it") {
  struct Row {
    const char* profile;
    std::function<double(double)> radius;  // of 30 mm at most, over 450 mm
    double factor;
    double tolerance;
  };
  const Row rows[] = {{"straight", [](double) { return 30.0; }, 1.00, 0.005},
                      {"taper to half", [](double x) { return 30 - 15 * x / 450; }, 0.75, 0.005},
                      {"taper to a third", [](double x) { return 30 - 20 * x / 450; }, 0.67, 0.005},
                      {"ten waves 10 mm deep",
                       [](double x) { return 25 + 5 * std::sin(2 * pi * x / 45); }, 0.93, 0.005},
                      {"half-round beads 20 mm wide",
                       [](double x) {
                         const double from_middle = std::fmod(x, 20.0) - 10;
                         return 20 + std::sqrt(std::max(0.0, 100 - from_middle * from_middle));
                       },
                       1.32, 0.01}};
  for (const Row& row : rows) {
    INFO(std::string(row.profile));
    const Turned leg{millimetres(450), millimetres(60), row.factor};
    CHECK(on(leg, Face::side) == Approx(triangulated(row.radius, 450)).epsilon(row.tolerance));
    CHECK(on(leg, Face::left) == Approx(pi * 30 * 30));
  }
}

TEST_CASE("a flush framed panel has the faces and edges of a board of its outside") {
  const FramedPanel door{frame(700, 450, 22, 70, 80), 1, {}, {}};
  const Board board{millimetres(700), millimetres(450), millimetres(22)};
  for (const Face face : all_faces) CHECK(on(door, face) == Approx(on(board, face)));
}

TEST_CASE("a panel set back adds the walls of its openings, all of them long grain") {
  // Two panels of (700 - 3 x 80) / 2 = 230 by 450 - 2 x 70 = 310: girth 2 x 2 x (230 + 310) = 2160.
  const FramedPanel door{frame(700, 450, 22, 70, 80), 2, millimetres(6), millimetres(8)};
  CHECK(on(door, Face::top) == Approx(700 * 450 + 2160 * 6));
  CHECK(on(door, Face::bottom) == Approx(700 * 450 + 2160 * 8));
  CHECK(of_cut(door, Face::top, Cut::along) == Approx(2160 * 6));
  CHECK(of_cut(door, Face::top, Cut::across) == 0.0);
}

TEST_CASE("a frame's ends are the ends of its stiles with a rail's edge between them") {
  const FramedPanel door{frame(700, 450, 22, 70, 80), 1, {}, {}};
  CHECK(of_cut(door, Face::left, Cut::across) == Approx(2 * 70 * 22));
  CHECK(of_cut(door, Face::left, Cut::along) == Approx((450 - 140) * 22));
  CHECK(of_cut(door, Face::front, Cut::along) == Approx(700 * 22));
}

TEST_CASE("a louvre has the surface of its frame and slats as separate boxes, less the joints") {
  const Frame outside = frame(700, 450, 22, 50, 60);
  const Louvre louvre{outside, 12, millimetres(40), millimetres(8)};
  const auto box = [](double l, double w, double t) { return 2 * (l * w + l * t + w * t); };
  // Each joint hides two equal areas: rail ends on stiles (4), slat ends in stiles (2 x 12).
  const double boxes = 2 * box(700, 50, 22) + 2 * box(350, 60, 22) + 12 * box(350, 40, 8);
  const double joints = 2 * (4 * 60 * 22 + 24 * 40 * 8);
  CHECK(whole(louvre) == Approx(boxes - joints));
  const double frame_face = 700 * 450 - 580 * 350;
  CHECK(on(louvre, Face::bottom) == Approx(frame_face + 12 * 350 * (40 + 8)));
}

TEST_CASE("a framed panel has the surface of its boxes, less the joints and what the frame hides") {
  // Set back 6 and 8 in 22: the panel is 8 thick, its edges meet the frame all round.
  const FramedPanel door{frame(700, 450, 22, 70, 80), 1, millimetres(6), millimetres(8)};
  const auto box = [](double l, double w, double t) { return 2 * (l * w + l * t + w * t); };
  const double boxes = 2 * box(700, 70, 22) + 2 * box(310, 80, 22) + box(540, 310, 8);
  const double joints = 2 * (4 * 80 * 22) + 2 * (2 * (540 + 310) * 8);
  CHECK(whole(door) == Approx(boxes - joints));
}

TEST_CASE("an estimated frame is its outside and a plain area is itself on either face") {
  const EstimatedFrame door{metres(2), metres(0.8), millimetres(40), false};
  CHECK(on(door, Face::top) == Approx(1.6e6));
  CHECK(on(door, Face::front) == Approx(80000));
  const PlainArea carving{square_metres(0.35)};
  CHECK(on(carving, Face::top) == Approx(350000));
  CHECK(on(carving, Face::bottom) == Approx(350000));
  CHECK(on(carving, Face::side) == 0.0);
}

TEST_CASE("random frames have the surface of their boxes") {
  std::mt19937 random(3);
  const auto from = [&](double least, double most) {
    return std::uniform_real_distribution<double>(least, most)(random);
  };
  for (int i = 0; i < 200; ++i) {
    const double l = from(300, 2400), w = from(200, 1200), t = from(15, 60);
    const double s = from(20, w / 3), r = from(20, l / 8);
    const int panels = 1 + i % 4;
    const double up = from(0, t / 3), down = from(0, t / 3);
    const FramedPanel door{frame(l, w, t, s, r), panels, millimetres(up), millimetres(down)};
    const auto box = [](double a, double b, double c) { return 2 * (a * b + a * c + b * c); };
    const double clear = w - 2 * s, each = (l - (panels + 1) * r) / panels, left = t - up - down;
    const double boxes =
        2 * box(l, s, t) + (panels + 1) * box(clear, r, t) + panels * box(each, clear, left);
    const double joints = 2 * (2 * (panels + 1) * r * t + panels * 2 * (each + clear) * left);
    CHECK(whole(door) == Approx(boxes - joints));
  }
}

// Source: NIST SP 811, appendix B.6: 1 in = 25.4 mm exactly, 1 ft = 0.3048 m exactly.
TEST_CASE("a square foot is 0.09290304 square metres and 144 square inches") {
  CHECK(square_feet(1).in(square_metres) == Approx(0.09290304).epsilon(1e-12));
  CHECK((inches(12) * inches(12)).in(square_feet) == Approx(1.0).epsilon(1e-12));
}
