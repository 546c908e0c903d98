#include "tackfree/input/coating_figures.hpp"

#include "input/bench_copy.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("class times that contradict the tin's move to it, in both directions") {
  BenchCopy bench;
  bench.text = replaced(bench.text, "\"recoat_after_h\": 8,", "\"recoat_after_h\": 4,");
  const Coating fast = bench.read_good().coatings.at(0);
  const auto after = [](const Coating& coating, Stage stage) {
    return coating.label_after[index_of(stage)].value();
  };
  CHECK(after(fast, Stage::dust_free).value == hours(2));
  CHECK(after(fast, Stage::touch).value == hours(4));
  CHECK(after(fast, Stage::recoat).origin == Origin::label);
  CHECK(after(fast, Stage::handle).value == hours(4));
  for (const Stage moved : {Stage::touch, Stage::handle})
    CHECK(after(fast, moved).origin == Origin::assumed);  // no tin says it
  CHECK(after(fast, Stage::sand).value == hours(12));
  CHECK(after(fast, Stage::sand).origin == Origin::practice);

  bench.text = replaced(bench.text, "\"recoat_after_h\": 4,", "\"recoat_after_h\": 24,");
  bench.text = replaced(bench.text, "        \"recoat_unsanded_within_h\": 12,\n", "");
  const Coating slow = bench.read_good().coatings.at(0);
  CHECK(after(slow, Stage::handle).value == hours(8));
  CHECK(after(slow, Stage::sand).value == hours(24));
  CHECK(slow.recoat_unsanded_within->value == hours(24));
}

TEST_CASE("what was measured goes before the label, and the label before the class") {
  const Job job = read_file("tests/input/every_key/job.json");
  const Coating& varnish = job.coatings.at(0);
  CHECK(varnish.limits.put_on_min.value == celsius(12));
  CHECK(varnish.limits.put_on_max.value == celsius(30));
  CHECK(varnish.limits.put_on_max.origin == Origin::label);
  CHECK(varnish.label_temperature == celsius(20));
  CHECK(job.coatings.at(1).label_temperature.in_celsius() == doctest::Approx(23));
  CHECK(job.coatings.at(1).solids.origin == Origin::practice);
}
