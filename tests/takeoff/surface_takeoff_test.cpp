#include "tackfree/takeoff/surface_takeoff.hpp"

#include <algorithm>
#include <numbers>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

Area total(const SurfaceTakeoff& takeoff) {
  return area_where(takeoff, [](const Surface&) { return true; });
}
Area on(const SurfaceTakeoff& takeoff, Face face) {
  return area_where(takeoff, [face](const Surface& s) { return s.face == face; });
}
Area on(const SurfaceTakeoff& takeoff, Grain grain) {
  return area_where(takeoff, [grain](const Surface& s) { return s.grain == grain; });
}
Area on(const SurfaceTakeoff& takeoff, Side side) {
  return area_where(takeoff, [side](const Surface& s) { return s.side == side; });
}
double mm2(Area area) { return area.in(square_metres)*1e6; }

SurfaceTakeoff of(const Part& part, bool show_side_is_bottom = false) {
  Job job = small_job();
  job.parts = {part};
  job.batches[0].show_side_is_bottom = show_side_is_bottom;
  return take_off(job);
}

Part with_cut_out(bool rim_coated = true) {
  Part part = small_top();
  part.cut_outs = {CutOut{
      .length = millimetres(500), .width = millimetres(200), .count = 2, .rim_coated = rim_coated}};
  return part;
}

Part with_groove(double length_mm, bool masked, Groove::Run run = Groove::Run::with_length) {
  Part part = small_top();
  Groove groove;
  groove.face = Face::bottom;
  groove.run = run;
  groove.length = millimetres(length_mm);
  groove.width = millimetres(6);
  groove.depth = millimetres(8);
  groove.masked = masked;
  part.grooves = {groove};
  return part;
}

}  // namespace

TEST_CASE("a solid board shows face grain on its faces, long edges and end grain") {
  const SurfaceTakeoff takeoff = of(small_top());
  CHECK(on(takeoff, Grain::face).in(square_metres) == Approx(2.160));
  CHECK(on(takeoff, Grain::long_edge).in(square_metres) == Approx(0.108));
  CHECK(on(takeoff, Grain::end).in(square_metres) == Approx(0.036));
  CHECK(on(takeoff, Grain::plywood_edge).in(square_metres) == 0.0);
}

TEST_CASE("all edges and ends of plywood are plywood edges") {
  Part part = small_top();
  part.material = Material::plywood;
  const SurfaceTakeoff takeoff = of(part);
  CHECK(on(takeoff, Grain::face).in(square_metres) == Approx(2.160));
  CHECK(on(takeoff, Grain::plywood_edge).in(square_metres) == Approx(0.144));
  CHECK(on(takeoff, Grain::long_edge) + on(takeoff, Grain::end) == Area{});
}

TEST_CASE("a turned leg drinks like a face at its side and like end grain at its ends") {
  Part leg;
  leg.shape = Round{.length = millimetres(700), .diameter = millimetres(40)};
  leg.coated = {Face::side, Face::left};
  leg.batch = "tops";
  const SurfaceTakeoff takeoff = of(leg);
  CHECK(mm2(on(takeoff, Grain::face)) == Approx(std::numbers::pi * 40 * 700));
  CHECK(mm2(on(takeoff, Grain::end)) == Approx(std::numbers::pi * 400));
  CHECK(on(takeoff, Side::back) == Area{});
}

TEST_CASE("only the sides to be coated count") {
  Part part = small_top();
  part.coated = {Face::top, Face::front};
  CHECK(total(of(part)).in(square_metres) == Approx(1.08 + 0.054));
}

TEST_CASE("quantity multiplies every surface and the tape") {
  Part one = with_groove(400, true);
  one.cut_outs = with_cut_out().cut_outs;
  Part seven = one;
  seven.quantity = 7;
  const SurfaceTakeoff a = of(one);
  const SurfaceTakeoff b = of(seven);
  REQUIRE(a.surfaces.size() == b.surfaces.size());
  for (std::size_t i = 0; i < a.surfaces.size(); ++i)
    CHECK(b.surfaces[i].area / a.surfaces[i].area == Approx(7));
  CHECK(b.masking.at(0).tape / a.masking.at(0).tape == Approx(7));
}

TEST_CASE("a cut-out takes its opening off both faces and adds its girth times the thickness") {
  const SurfaceTakeoff plain = of(small_top());
  const SurfaceTakeoff bare_rim = of(with_cut_out(false));
  const SurfaceTakeoff rimmed = of(with_cut_out());
  const double openings = 2 * 500 * 200;
  CHECK(mm2(on(plain, Face::bottom)) - mm2(on(rimmed, Face::bottom)) == Approx(openings));
  CHECK(mm2(total(plain)) - mm2(total(bare_rim)) == Approx(2 * openings));
  CHECK(mm2(total(rimmed)) - mm2(total(bare_rim)) == Approx(2 * 2 * (500 + 200) * 30));
  CHECK(mm2(on(rimmed, Grain::long_edge)) - mm2(on(plain, Grain::long_edge)) ==
        Approx(2 * 2 * 500 * 30));
  CHECK(mm2(on(rimmed, Grain::end)) - mm2(on(plain, Grain::end)) == Approx(2 * 2 * 200 * 30));
}

TEST_CASE("a cut-out with its rim coated leaves the area alone when length x width = rim") {
  // 60 x 60 in a board of 30: 2 x 3600 off, 4 x 60 x 30 = 7200 on.
  Part part = small_top();
  part.cut_outs = {CutOut{.length = millimetres(60), .width = millimetres(60)}};
  CHECK(mm2(total(of(part))) == Approx(mm2(total(of(small_top())))));
}

TEST_CASE("the rim goes with the top, else with the bottom, else it stays bare") {
  Part part = with_cut_out();
  const double rims = 2 * 2 * (500 + 200) * 30;
  const double face = 1800.0 * 600 - 2 * 500 * 200;
  part.coated = {Face::top, Face::bottom};
  CHECK(mm2(on(of(part), Face::top)) == Approx(face + rims));
  CHECK(mm2(on(of(part), Face::bottom)) == Approx(face));
  part.coated = {Face::bottom};
  CHECK(mm2(on(of(part), Side::back)) == Approx(face + rims));
  part.coated = {Face::front};
  CHECK(mm2(total(of(part))) == Approx(1800 * 30));
}

TEST_CASE(
    "a stopped groove adds its four walls; an open one loses its outlets instead of its ends") {
  const double plain = mm2(total(of(small_top())));
  CHECK(mm2(total(of(with_groove(400, false)))) - plain ==
        Approx(2 * 400 * 8 + 2 * 6 * 8).epsilon(1e-9));
  const SurfaceTakeoff open = of(with_groove(1800, false));
  CHECK(mm2(total(open)) - plain == Approx(2 * 1800 * 8 - 2 * 6 * 8).epsilon(1e-9));
  CHECK(mm2(on(open, Face::left)) == Approx(600 * 30 - 6 * 8));
  CHECK(mm2(on(open, Face::right)) == Approx(600 * 30 - 6 * 8));
  const SurfaceTakeoff across = of(with_groove(600, false, Groove::Run::with_width));
  CHECK(mm2(on(across, Face::front)) == Approx(1800 * 30 - 6 * 8));
  CHECK(mm2(on(across, Face::back)) == Approx(1800 * 30 - 6 * 8));
  CHECK(mm2(on(across, Grain::end)) == Approx(2 * 600 * 30 + 2 * 600 * 8));
}

TEST_CASE("outlets at ends that are not coated take nothing off") {
  Part part = with_groove(1800, false);
  part.coated = {Face::bottom};
  CHECK(mm2(total(of(part))) == Approx(1800 * 600 + 2 * 1800 * 8));
}

TEST_CASE("groove walls in plywood are plywood edges") {
  Part part = with_groove(400, false);
  part.material = Material::plywood;
  part.coated = {Face::bottom};
  CHECK(mm2(on(of(part), Grain::plywood_edge)) == Approx(2 * 400 * 8 + 2 * 6 * 8));
}

TEST_CASE("a masked groove takes exactly its mouth off its face, stopped or open") {
  const double plain = mm2(total(of(small_top())));
  for (const double length : {400.0, 1800.0}) {
    const SurfaceTakeoff masked = of(with_groove(length, true));
    CHECK(plain - mm2(total(masked)) == Approx(length * 6).epsilon(1e-9));
    CHECK(mm2(on(masked, Face::bottom)) == Approx(1800 * 600 - length * 6));
  }
  CHECK(of(with_groove(400, true)).masking.at(0).tape.in(millimetres) == Approx(812));
  CHECK(of(with_groove(1800, true)).masking.at(0).tape.in(millimetres) == Approx(3600));
}

TEST_CASE("a groove in a face that is not coated needs no tape") {
  Part part = with_groove(400, true);
  part.coated = {Face::top};
  CHECK(of(part).masking.empty());
  CHECK(of(with_groove(400, false)).masking.empty());
}

TEST_CASE("the bottom and what opens to it is the back, all else shows; a batch may swap them") {
  const SurfaceTakeoff usual = of(with_groove(400, false));
  const double bottom = 1800.0 * 600 + 2 * 400 * 8 + 2 * 6 * 8;
  const double edges = 2.0 * 1800 * 30 + 2 * 600 * 30;
  CHECK(mm2(on(usual, Side::back)) == Approx(bottom));
  CHECK(mm2(on(usual, Side::show)) == Approx(1800 * 600 + edges));
  const SurfaceTakeoff swapped = of(with_groove(400, false), true);
  CHECK(mm2(on(swapped, Side::back)) == Approx(1800 * 600));
  CHECK(mm2(on(swapped, Side::show)) == Approx(bottom + edges));
}

TEST_CASE("surfaces follow the parts list and name their row") {
  Job job = small_job();
  job.parts.push_back(small_top());
  const SurfaceTakeoff takeoff = take_off(job);
  CHECK(takeoff.surfaces.size() == 12);
  CHECK(takeoff.surfaces.front().part == 0);
  CHECK(takeoff.surfaces.back().part == 1);
  CHECK(std::ranges::is_sorted(takeoff.surfaces, {}, &Surface::part));
}
