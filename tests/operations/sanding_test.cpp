#include "tackfree/operations/sanding.hpp"

#include <stdexcept>

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

struct GrainSize {
  int p;
  double micrometres;
};

TEST_CASE("grain sizes are those of FEPA 43-1 / ISO 6344") {
  // P12 to P220: mean sizes as published in FEPA 43-1 charts. P240 and finer: median ds50, from
  // memory, with the tolerance of the standard (from memory too) in the row's own table.
  const GrainSize published[] = {{12, 1815}, {40, 425},  {80, 201}, {100, 162},
                                 {120, 125}, {150, 100}, {180, 82}, {220, 68}};
  for (const auto& row : published)
    CHECK(grain_size({row.p}).in(millimetres)*1000 == doctest::Approx(row.micrometres));
  CHECK(grain_size({240}).in(millimetres)*1000 == doctest::Approx(58.5));
  CHECK(grain_size({2500}).in(millimetres)*1000 == doctest::Approx(8.4));
  CHECK_THROWS_AS(grain_size({90}), std::out_of_range);
}

TEST_CASE("finer grades have smaller grains, all along the scale") {
  REQUIRE(p_grades.size() == 28);
  for (std::size_t i = 1; i < p_grades.size(); ++i)
    CHECK(grain_size({p_grades[i]}) < grain_size({p_grades[i - 1]}));
}

void check_sequence(const std::vector<Grit>& grits) {
  for (std::size_t i = 1; i < grits.size(); ++i) {
    CAPTURE(grits[i].p);
    // Skip at most one grit: common practice, no source.
    CHECK(grits_skipped(grits[i - 1], grits[i]) >= 0);
    CHECK(grits_skipped(grits[i - 1], grits[i]) <= 1);
    // Each step takes out the scratches of the one before: the grain shrinks by a quarter to a
    // third of its size, never more than by half. On the FEPA scale one skipped grade is at most
    // 201/125 = 1.61.
    const double ratio = grain_size(grits[i - 1]) / grain_size(grits[i]);
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
