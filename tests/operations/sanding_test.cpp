#include "tackfree/operations/sanding.hpp"

#include <algorithm>
#include <array>

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

struct GrainSize {
  int p;
  double micrometres;
};

/// Source: FEPA 43-1 / ISO 6344 (P12 to P220 mean sizes of the macrogrits, as published in FEPA
/// 43-1 charts; P240 to P2500 median ds50 of the microgrits, from memory).
constexpr std::array<GrainSize, 28> fepa{
    {{12, 1815},   {16, 1324},   {20, 1000},   {24, 764},   {30, 642},   {36, 538},
     {40, 425},    {50, 336},    {60, 269},    {80, 201},   {100, 162},  {120, 125},
     {150, 100},   {180, 82},    {220, 68},    {240, 58.5}, {280, 52.2}, {320, 46.2},
     {360, 40.5},  {400, 35.0},  {500, 30.2},  {600, 25.8}, {800, 21.8}, {1000, 18.3},
     {1200, 15.3}, {1500, 12.6}, {2000, 10.3}, {2500, 8.4}}};

/// The place of a grit on that scale.
std::size_t place_of(Grit grit) {
  const auto found = std::ranges::find(fepa, grit.p, &GrainSize::p);
  REQUIRE(found != fepa.end());
  return static_cast<std::size_t>(found - fepa.begin());
}

TEST_CASE("the grades that a person may write are those of the P-scale, from coarse to fine") {
  CHECK(std::ranges::equal(p_grades, fepa, {}, {}, &GrainSize::p));
}

void check_sequence(const std::vector<Grit>& grits) {
  for (std::size_t i = 1; i < grits.size(); ++i) {
    CAPTURE(grits[i].p);
    // Skip at most one grit: common practice, no source.
    const std::size_t coarse = place_of(grits[i - 1]), fine = place_of(grits[i]);
    CHECK(fine > coarse);
    CHECK(fine <= coarse + 2);
    // Each step takes out the scratches of the one before: the grain shrinks by a quarter to a
    // third of its size, never more than by half. On the FEPA scale one skipped grade is at most
    // 201/125 = 1.61.
    const double ratio = fepa.at(coarse).micrometres / fepa.at(fine).micrometres;
    CHECK(ratio > 1.15);
    CHECK(ratio < 1.65);
  }
}

TEST_CASE("every class's bare-wood sequence skips at most one grit and halves no grain") {
  const Job job = testing::sample_job();
  REQUIRE(job.data.classes.size() >= 3);
  for (const Coating& coating : job.data.classes) {
    CAPTURE(coating.class_key);
    check_sequence(coating.grits.bare.value);
    check_sequence(coating.grits.bare_veneer.value);
    CHECK(coating.grits.bare_veneer.value.front().p >= 150);  // rule 6: coarser cuts through veneer
    CHECK(coating.grits.bare_veneer.value.back().p >= 180);
    if (coating.grits.after_first)
      CHECK(coating.grits.after_first->value > coating.grits.bare.value.back());
  }
}

TEST_CASE("veneer starts finer than solid wood") {
  const Job job = testing::sample_job();
  const auto solid = bare_grits(job.coatings[0], Material::solid_wood);
  const auto veneer = bare_grits(job.coatings[0], Material::plywood);
  CHECK(veneer.front() > solid.front());
}

TEST_CASE("coats are keyed between, never after the last, and not where the class needs none") {
  Coating coating = testing::sample_job().coatings[0];
  CHECK(between_grit(coating, 1, 4) == coating.grits.after_first->value);
  CHECK(between_grit(coating, 2, 4) == coating.grits.between->value);
  CHECK(between_grit(coating, 3, 4) == coating.grits.before_last->value);
  CHECK_FALSE(between_grit(coating, 4, 4));
  CHECK(between_grit(coating, 1, 2) == coating.grits.after_first->value);
  coating.needs_sanding_between = false;
  CHECK_FALSE(between_grit(coating, 1, 3));
}

}  // namespace
}  // namespace tackfree
