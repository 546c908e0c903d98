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
double mm2_of(Area area) { return area.in(square_metres)*1e6; }

SurfaceTakeoff of(const Part& part, bool show_side_is_bottom = false) {
  Job job = small_job();
  job.parts = {part};
  job.batches[0].show_side_is_bottom = show_side_is_bottom;
  return take_off(job);
}

Part with_cut_out(bool rim_coated = true) {
  Part part = small_top();
  part.features = {CutOut{
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
  part.features = {groove};
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
  CHECK(mm2_of(on(takeoff, Grain::face)) == Approx(std::numbers::pi * 40 * 700));
  CHECK(mm2_of(on(takeoff, Grain::end)) == Approx(std::numbers::pi * 400));
  CHECK(on(takeoff, Side::back) == Area{});
}

TEST_CASE("only the sides to be coated count") {
  Part part = small_top();
  part.coated = {Face::top, Face::front};
  CHECK(total(of(part)).in(square_metres) == Approx(1.08 + 0.054));
}

TEST_CASE("quantity multiplies every surface and the tape") {
  Part one = with_groove(400, true);
  one.features.push_back(with_cut_out().features[0]);
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
  CHECK(mm2_of(on(plain, Face::bottom)) - mm2_of(on(rimmed, Face::bottom)) == Approx(openings));
  CHECK(mm2_of(total(plain)) - mm2_of(total(bare_rim)) == Approx(2 * openings));
  CHECK(mm2_of(total(rimmed)) - mm2_of(total(bare_rim)) == Approx(2 * 2 * (500 + 200) * 30));
  CHECK(mm2_of(on(rimmed, Grain::long_edge)) - mm2_of(on(plain, Grain::long_edge)) ==
        Approx(2 * 2 * 500 * 30));
  CHECK(mm2_of(on(rimmed, Grain::end)) - mm2_of(on(plain, Grain::end)) == Approx(2 * 2 * 200 * 30));
}

TEST_CASE("a cut-out with its rim coated leaves the area alone when length x width = rim") {
  // 60 x 60 in a board of 30: 2 x 3600 off, 4 x 60 x 30 = 7200 on.
  Part part = small_top();
  part.features = {CutOut{.length = millimetres(60), .width = millimetres(60)}};
  CHECK(mm2_of(total(of(part))) == Approx(mm2_of(total(of(small_top())))));
}

TEST_CASE("the rim goes with the top, else with the bottom, else it stays bare") {
  Part part = with_cut_out();
  const double rims = 2 * 2 * (500 + 200) * 30;
  const double face = 1800.0 * 600 - 2 * 500 * 200;
  part.coated = {Face::top, Face::bottom};
  CHECK(mm2_of(on(of(part), Face::top)) == Approx(face + rims));
  CHECK(mm2_of(on(of(part), Face::bottom)) == Approx(face));
  part.coated = {Face::bottom};
  CHECK(mm2_of(on(of(part), Side::back)) == Approx(face + rims));
  part.coated = {Face::front};
  CHECK(mm2_of(total(of(part))) == Approx(1800 * 30));
}

TEST_CASE(
    "a stopped groove adds its four walls; an open one loses its outlets instead of its ends") {
  const double plain = mm2_of(total(of(small_top())));
  CHECK(mm2_of(total(of(with_groove(400, false)))) - plain ==
        Approx(2 * 400 * 8 + 2 * 6 * 8).epsilon(1e-9));
  const SurfaceTakeoff open = of(with_groove(1800, false));
  CHECK(mm2_of(total(open)) - plain == Approx(2 * 1800 * 8 - 2 * 6 * 8).epsilon(1e-9));
  CHECK(mm2_of(on(open, Face::left)) == Approx(600 * 30 - 6 * 8));
  CHECK(mm2_of(on(open, Face::right)) == Approx(600 * 30 - 6 * 8));
  const SurfaceTakeoff across = of(with_groove(600, false, Groove::Run::with_width));
  CHECK(mm2_of(on(across, Face::front)) == Approx(1800 * 30 - 6 * 8));
  CHECK(mm2_of(on(across, Face::back)) == Approx(1800 * 30 - 6 * 8));
  CHECK(mm2_of(on(across, Grain::end)) == Approx(2 * 600 * 30 + 2 * 600 * 8));
}

TEST_CASE("outlets at ends that are not coated take nothing off") {
  Part part = with_groove(1800, false);
  part.coated = {Face::bottom};
  CHECK(mm2_of(total(of(part))) == Approx(1800 * 600 + 2 * 1800 * 8));
}

TEST_CASE("groove walls in plywood are plywood edges") {
  Part part = with_groove(400, false);
  part.material = Material::plywood;
  part.coated = {Face::bottom};
  CHECK(mm2_of(on(of(part), Grain::plywood_edge)) == Approx(2 * 400 * 8 + 2 * 6 * 8));
}

TEST_CASE("a masked groove takes exactly its mouth off its face, stopped or open") {
  const double plain = mm2_of(total(of(small_top())));
  for (const double length : {400.0, 1800.0}) {
    const SurfaceTakeoff masked = of(with_groove(length, true));
    CHECK(plain - mm2_of(total(masked)) == Approx(length * 6).epsilon(1e-9));
    CHECK(mm2_of(on(masked, Face::bottom)) == Approx(1800 * 600 - length * 6));
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
  CHECK(mm2_of(on(usual, Side::back)) == Approx(bottom));
  CHECK(mm2_of(on(usual, Side::show)) == Approx(1800 * 600 + edges));
  const SurfaceTakeoff swapped = of(with_groove(400, false), true);
  CHECK(mm2_of(on(swapped, Side::back)) == Approx(1800 * 600));
  CHECK(mm2_of(on(swapped, Side::show)) == Approx(bottom + edges));
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

TEST_CASE("all edges and ends of fibreboard are fibreboard edges, rims too") {
  Part part = with_cut_out();
  part.material = Material::fibreboard;
  const SurfaceTakeoff takeoff = of(part);
  CHECK(mm2_of(on(takeoff, Grain::fibreboard_edge)) ==
        Approx(2 * 1800 * 30 + 2 * 600 * 30 + 2 * 2 * (500 + 200) * 30));
  CHECK(on(takeoff, Grain::long_edge) + on(takeoff, Grain::end) == Area{});
}

TEST_CASE("faces of ring-porous wood are open-pored and rough-sawn ones rough, edges are not") {
  Part part = small_top();
  part.wood = Wood::ring_porous;
  CHECK(on(of(part), Grain::open_pored_face).in(square_metres) == Approx(2.160));
  CHECK(on(of(part), Grain::face) == Area{});
  CHECK(on(of(part), Grain::long_edge).in(square_metres) == Approx(0.108));
  part.surface = WoodSurface::rough_sawn;
  CHECK(on(of(part), Grain::rough_face).in(square_metres) == Approx(2.160));
  CHECK(on(of(part), Grain::open_pored_face) == Area{});
}

TEST_CASE("a tube's inside counts where it is asked for only") {
  Part lamp = small_top();
  lamp.shape = Tube{millimetres(300), millimetres(80), millimetres(60)};
  lamp.coated = {Face::side};
  CHECK(mm2_of(total(of(lamp))) == Approx(std::numbers::pi * 80 * 300));
  lamp.coated = {Face::side, Face::inside, Face::left};
  CHECK(mm2_of(total(of(lamp))) == Approx(std::numbers::pi * (140 * 300 + 40 * 40 - 30 * 30)));
  CHECK(mm2_of(on(of(lamp), Grain::end)) == Approx(std::numbers::pi * (40 * 40 - 30 * 30)));
}

TEST_CASE("the inside of a louvre's frame goes with its top, or with its bottom alone") {
  Part shutter = small_top();
  shutter.shape = Louvre{.frame = {millimetres(700), millimetres(450), millimetres(22),
                                   millimetres(50), millimetres(60)},
                         .slats = 12,
                         .slat_width = millimetres(40),
                         .slat_thickness = millimetres(8)};
  const double one_face = 700 * 450 - 580 * 350 + 12 * 350 * 48;
  const double walls = 2 * (580 + 350) * 22 - 24 * 40 * 8;
  shutter.coated = {Face::top, Face::bottom};
  CHECK(mm2_of(on(of(shutter), Face::top)) == Approx(one_face + walls));
  CHECK(mm2_of(on(of(shutter), Face::bottom)) == Approx(one_face));
  shutter.coated = {Face::bottom};
  CHECK(mm2_of(total(of(shutter))) == Approx(one_face + walls));
}

TEST_CASE("estimated work has its allowance on its faces, not on its edges") {
  Job job = small_job();
  job.data.allowances.framed.value = 1.3;
  job.data.allowances.louvred.value = 1.8;
  job.parts[0].shape = EstimatedFrame{metres(2), metres(0.8), millimetres(40), false};
  job.parts[0].coated = {Face::top, Face::bottom, Face::front};
  // A panelled door of 3 ft x 7 ft counts 21 x 1.30 x 2 = 54.6 sq ft.
  // Source: Indian Standard IS 1200 Part 15, as reproduced; the example follows from its rule.
  CHECK(on(take_off(job), Face::top).in(square_metres) == Approx(1.3 * 1.6));
  CHECK(on(take_off(job), Face::front).in(square_metres) == Approx(0.08));
  job.parts[0].shape = EstimatedFrame{feet(7), feet(3), inches(1.5), false};
  job.parts[0].coated = {Face::top, Face::bottom};
  CHECK(total(take_off(job)).in(square_feet) == Approx(54.6));
  job.parts[0].shape = EstimatedFrame{feet(7), feet(3), inches(1.5), true};
  CHECK(total(take_off(job)).in(square_feet) == Approx(21 * 1.8 * 2));
}

TEST_CASE("a plain area counts on each coated face by its own grain") {
  Part carving = small_top();
  carving.shape = PlainArea{square_metres(0.35), Grain::end};
  carving.coated = {Face::bottom};
  carving.quantity = 3;
  CHECK(on(of(carving), Grain::end).in(square_metres) == Approx(1.05));
  CHECK(on(of(carving), Side::back).in(square_metres) == Approx(1.05));
}

TEST_CASE("a mask round a leg takes its band off the side and needs tape") {
  Part leg = small_top();
  leg.shape = Turned{millimetres(450), millimetres(60), 0.9};
  leg.coated = {Face::side};
  leg.features = {Mask{.face = Face::side, .length = millimetres(40)}};
  CHECK(mm2_of(total(of(leg))) == Approx(std::numbers::pi * 60 * (0.9 * 450 - 40)));
  CHECK(of(leg).masking.at(0).tape.in(millimetres) == Approx(std::numbers::pi * 60));
}

TEST_CASE("a side that is masked whole leaves no surface behind") {
  Part part = small_top();
  part.features = {Mask{.face = Face::front, .length = metres(1.8), .width = millimetres(30)}};
  CHECK(std::ranges::none_of(of(part).surfaces,
                             [](const Surface& s) { return s.face == Face::front; }));
}

TEST_CASE("the surfaces of each row are found by its place") {
  Job job = small_job();
  job.parts.push_back(small_top());
  job.parts.back().coated = {Face::top};
  job.parts.push_back(small_top());
  job.parts.back().coated = {};
  const SurfaceTakeoff takeoff = take_off(job);
  CHECK(surfaces_of(takeoff, 0).size() == 6);
  CHECK(surfaces_of(takeoff, 1).size() == 1);
  CHECK(surfaces_of(takeoff, 2).empty());
}
