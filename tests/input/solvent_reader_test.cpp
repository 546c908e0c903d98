#include "tackfree/input/solvent_reader.hpp"

#include "tackfree/input/finishing_data_reader.hpp"
#include "tackfree/syntax/json_document.hpp"

#include <algorithm>
#include <array>

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

const FinishingData& data() {
  static const FinishingData built_in = built_in_finishing_data();
  return built_in;
}

const Solvent& solvent(const std::string& key) {
  const auto found = std::ranges::find(data().solvents, key, &Solvent::key);
  REQUIRE_MESSAGE(found != data().solvents.end(), key);
  return *found;
}

std::vector<SolventShare> mix_in(const std::string& list, Problems& problems) {
  const auto tree = parse_json("{\"solvent_mix\": " + list + "}", "job.json", problems);
  REQUIRE(tree);
  JsonCursor object(*tree, "", "job.json", problems);
  return read_solvent_mix(object, data().solvents, nullptr);
}

}  // namespace

// Source: NIOSH recommended limits, mg/m3 (8 or 10 h; 15 min), from the NIOSH and OSHA pages of
// each substance; where a page gives ppm beside it, 24.45 L/mol must lead to the same within 3 %.
// Lower ones of others: Directive 2000/39/EC for xylene (from memory) and dipropylene glycol methyl
// ether, 2006/15/EC for toluene (from memory), (EU) 2019/1831 for the butyl acetates; Ontario's 20
// ppm for turpentine. Seen failing: NIOSH's stood there where others are lower.
TEST_CASE("limits are the lowest of the published ones at hand, in mg/m3 and in ppm alike") {
  struct Row {
    const char* key;
    double niosh_8h, niosh_ppm, niosh_15min, other_8h, other_15min;
    const char* by;
  };
  for (const Row& row :
       {Row{"mineral_spirits", 350, 0, 1800, 0, 0, "NIOSH"},
        Row{"ethanol", 1900, 1000, 0, 0, 0, "NIOSH"},
        Row{"isopropanol", 980, 400, 0, 0, 0, "NIOSH"}, Row{"acetone", 590, 250, 0, 0, 0, "NIOSH"},
        Row{"methyl_ethyl_ketone", 590, 200, 0, 0, 0, "NIOSH"},
        Row{"toluene", 375, 100, 560, 192, 384, "EU"}, Row{"xylene", 435, 100, 655, 221, 442, "EU"},
        Row{"n_butyl_acetate", 710, 150, 950, 241, 723, "EU"},
        Row{"ethyl_acetate", 1400, 400, 0, 0, 0, "NIOSH"},
        Row{"butoxyethanol", 24, 5, 0, 0, 0, "NIOSH"},
        Row{"dipropylene_glycol_ether", 600, 100, 0, 308, 0, "EU"},
        Row{"turpentine", 560, 100, 0, 111, 0, "Ontario"}}) {
    CAPTURE(row.key);
    const Solvent& each = solvent(row.key);
    const auto lowest = [](double a, double b) { return b > 0 ? std::min(a, b) : a; };
    CHECK(each.limit_8h.value.in(milligrams_per_cubic_metre) ==
          Approx(lowest(row.niosh_8h, row.other_8h)).epsilon(0.03));
    CHECK(each.limits_by == row.by);
    CHECK(each.limit_8h.origin == Origin::published);
    CHECK_FALSE(each.limit_8h.source.empty());
    if (row.niosh_ppm > 0)
      CHECK(from_ppm(row.niosh_ppm, each.molar_mass.value).in(milligrams_per_cubic_metre) ==
            Approx(row.niosh_8h).epsilon(0.03));
    if (row.niosh_15min > 0)
      CHECK(each.limit_15min->value.in(milligrams_per_cubic_metre) ==
            Approx(lowest(row.niosh_15min, row.other_15min)).epsilon(0.03));
  }
}

// Arithmetic at 24.45 L/mol, mg/m3 for one ppm.
TEST_CASE("ppm turn into mg/m3 by the usual molar volume") {
  for (const auto& [molar_mass, mg] :
       {std::pair{46.07, 1.884}, {58.08, 2.375}, {92.14, 3.769}, {118.17, 4.833}, {144.0, 5.890}})
    CHECK(from_ppm(1, grams_per_mole(molar_mass)).in(milligrams_per_cubic_metre) ==
          Approx(mg).epsilon(3e-4));
}

// Source: NIOSH Pocket Guide: ethyl alcohol and petroleum distillates list supplied air only,
// turpentine lists cartridges.
TEST_CASE("no cartridge serves for ethanol, light naphtha and what is not named") {
  CHECK_FALSE(solvent("ethanol").cartridges_serve);
  CHECK_FALSE(solvent("light_naphtha").cartridges_serve);
  CHECK_FALSE(solvent("unnamed").cartridges_serve);
  CHECK(solvent("turpentine").cartridges_serve);
}

TEST_CASE("every class gives off solvents that are known, in shares that add up") {
  for (const Coating& coating : data().classes)
    for (const auto* mix : {&coating.solvent_mix, &coating.thinner_mix}) {
      CAPTURE(coating.class_key);
      REQUIRE_FALSE(mix->empty());
      Fraction sum;
      for (const SolventShare& share : *mix) {
        (void)solvent(share.solvent);
        sum += share.share.value;
      }
      CHECK(sum.in(fraction) == Approx(1));
    }
}

TEST_CASE("a text names its solvents in equal shares, or the unnamed one") {
  const auto lacquer = mix_by_text("toluene, n-butyl acetate, ketones", data().solvents);
  REQUIRE(lacquer.size() == 3);
  CHECK(lacquer[0].share.value.in(fraction) == Approx(1.0 / 3));
  CHECK(lacquer[0].share.origin == Origin::assumed);
  const auto unknown = mix_by_text("as lacquer", data().solvents);
  REQUIRE(unknown.size() == 1);
  CHECK(unknown[0].solvent == "unnamed");
}

TEST_CASE("a tin's own mix is read; wrong names and sums are mistakes") {
  Problems none, name, sum;
  const auto mix = mix_in(R"([{"solvent": "toluene", "share_pct": 60},
                              {"solvent": "acetone", "share_pct": 40}])",
                          none);
  CHECK(none.empty());
  REQUIRE(mix.size() == 2);
  CHECK(mix[1].share.value.in(percent) == Approx(40));
  CHECK(mix[1].share.origin == Origin::label);
  mix_in(R"([{"solvent": "tolune", "share_pct": 100}])", name);
  REQUIRE(name.size() == 1);
  CHECK(holds(name[0].hint, "toluene"));
  mix_in(R"([{"solvent": "toluene", "share_pct": 90}])", sum);
  CHECK(sum.size() == 1);
}
