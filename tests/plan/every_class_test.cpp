#include "tackfree/plan/make_plan.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

/// How each class is usually put on, and what goes over the ones that are no finish alone.
struct Usual {
  const char* class_key;
  std::vector<const char*> methods;
  const char* over = nullptr;
};
const std::vector<Usual> usual_ways{{"oil_polyurethane", {"brush"}},
                                    {"long_oil_varnish", {"brush"}},
                                    {"wiping_varnish", {"wipe"}},
                                    {"waterborne_polyurethane", {"brush", "foam_roller", "hvlp"}},
                                    {"waterborne_two_component", {"foam_roller", "hvlp"}},
                                    {"nitrocellulose_lacquer", {"hvlp"}},
                                    {"shellac", {"brush", "hvlp"}},
                                    {"conversion_varnish", {"hvlp"}},
                                    {"two_component_polyurethane", {"brush", "hvlp"}},
                                    {"hardwax_oil", {"wipe", "brush"}},
                                    {"drying_oil", {"wipe", "brush"}},
                                    {"raw_drying_oil", {"wipe"}},
                                    {"sanding_sealer", {"hvlp"}, "nitrocellulose_lacquer"},
                                    {"oil_stain", {"wipe", "brush"}, "oil_polyurethane"}};

Plan plan_for(const Usual& usual, const char* method, Sides sides) {
  Job job = testing::sample_job(usual.class_key);
  job.air = ConstantAir{celsius(22), humidity_percent(50)};
  job.batches[0].sides = sides;
  job.systems[0].steps[0].method = method;
  job.systems[0].steps[0].coats.reset();
  if (usual.over != nullptr) {
    job.coatings.push_back(testing::named(testing::class_of(job.data, usual.over), "top coat"));
    job.systems[0].steps.push_back(
        {"top coat", "top coat", "brush", std::nullopt, std::nullopt, 0});
  }
  Problems problems;
  auto plan = make_plan(std::move(job), testing::instant("2027-04-05T17:00Z"), problems);
  REQUIRE(problems.empty());
  return std::move(*plan);
}

TEST_CASE("every class is planned whole in kind air, turned over or on points, by its methods") {
  const Job job = testing::sample_job();
  CHECK(usual_ways.size() == job.data.classes.size());
  for (const Usual& usual : usual_ways)
    for (const char* method : usual.methods)
      for (const Sides sides : {Sides::turn_over, Sides::on_points}) {
        CAPTURE(usual.class_key);
        CAPTURE(method);
        // make_plan throws when the auditor finds a broken rule.
        const Plan plan = plan_for(usual, method, sides);
        CHECK(plan.schedule.unplaced.empty());
        CHECK(plan.schedule.ready_at);
        CHECK(plan.schedule.steps.size() == plan.list.operations.size());
        for (const Operation& op : plan.list.operations) {
          CAPTURE(op.key);
          CHECK(op.how.size() >= 2);
          CHECK(op.how.size() <= 4);
        }
      }
}

/// A batch's work in short: grits, `damp`, `dust`, `coat` with its thinner in percent of the
/// coating and a star for each mixed pot, `wipe`, `fit`.
std::string sequence(const Plan& plan) {
  std::string text;
  for (const Operation& op : plan.list.operations) {
    std::string word{word_for(op.kind)};
    if (op.grit) word = "P" + std::to_string(op.grit->p);
    if (op.kind == OperationKind::raise_grain) word = "damp";
    if (op.kind == OperationKind::dust_off) word = "dust";
    if (op.kind == OperationKind::wipe_off) word = "wipe";
    if (op.kind == OperationKind::fit_hardware) word = "fit";
    if (op.kind == OperationKind::coat) {
      const auto thinner = std::lround(100 * (op.thinner / op.liquid));
      if (thinner > 0) word += "+" + std::to_string(thinner);
      word += std::string(static_cast<std::size_t>(op.pots), '*');
    }
    text += (text.empty() ? "" : " ") + word;
  }
  return text;
}

// What a finisher of the class would look for; docs/classes.md says against what each was checked.
TEST_CASE("each class gets the grits, thinning, coats, pots and wiping off of its trade") {
  const std::map<std::string, std::string> expected{
      {"oil_polyurethane", "P120 P150 P180 P220 dust coat+10 P240 dust coat P320 dust coat fit"},
      {"long_oil_varnish",
       "P120 P150 P180 P220 dust coat+20 P240 dust coat P320 dust coat P320 dust coat fit"},
      {"wiping_varnish",
       "P120 P150 P180 P220 dust coat P320 dust coat P400 dust coat P400 dust coat P400 dust coat "
       "P400 dust coat fit"},
      {"waterborne_polyurethane",
       "P120 P150 P180 P220 damp P220 dust coat P320 dust coat P320 dust coat fit"},
      {"waterborne_two_component",
       "P120 P150 P180 P220 damp P220 dust coat* P320 dust coat* P320 dust coat* fit"},
      {"nitrocellulose_lacquer",
       "P120 P150 P180 dust coat+11 P320 dust coat+11 coat+11 P400 dust coat+11 fit"},
      {"shellac",
       "P120 P150 P180 P220 dust coat+50 P320 dust coat P400 dust coat P400 dust coat P400 dust "
       "coat fit"},
      {"conversion_varnish", "P120 P150 P180 dust coat* P320 dust coat* P320 dust coat* fit"},
      {"two_component_polyurethane",
       "P120 P150 P180 dust coat* P320 dust coat* P320 dust coat* fit"},
      {"hardwax_oil", "P120 P150 dust coat wipe P320 dust coat wipe fit"},
      {"drying_oil", "P120 P150 P180 P220 dust coat+30 wipe P320 dust coat wipe fit"},
      {"raw_drying_oil", "P120 P150 P180 P220 dust coat+30 wipe P320 dust coat wipe fit"},
      {"sanding_sealer",
       "P120 P150 P180 dust coat P320 dust coat P320 dust coat P400 dust coat fit"},
      {"oil_stain",
       "P120 P150 P180 P220 dust coat wipe dust coat P320 dust coat P320 dust coat fit"}};
  REQUIRE(expected.size() == usual_ways.size());
  for (const Usual& usual : usual_ways) {
    CAPTURE(usual.class_key);
    CHECK(sequence(plan_for(usual, usual.methods.front(), Sides::on_points)) ==
          expected.at(usual.class_key));
  }
}

TEST_CASE("every class that builds a film reaches its aim of normal wear within its coats") {
  int films = 0;
  for (const Usual& usual : usual_ways) {
    const Plan plan = plan_for(usual, usual.methods.front(), Sides::on_points);
    if (!plan.job.coatings[0].builds_film) continue;
    CAPTURE(usual.class_key);
    ++films;
    const StepFilm& film = plan.volumes.films[0];
    CHECK(film.verdict == StepFilm::Verdict::good);
    CHECK(film.build.coats <= plan.job.coatings[0].coats_max.value);
  }
  CHECK(films == 9);
}

TEST_CASE("coats wait for the stage they need: sand before sanding, recoat without it") {
  for (const Usual& usual : usual_ways) {
    CAPTURE(usual.class_key);
    const Plan plan = plan_for(usual, usual.methods.front(), Sides::on_points);
    std::optional<Instant> below_is_on;
    std::size_t below = 0;
    bool sanded = false;
    for (std::size_t i = 0; i < plan.list.operations.size(); ++i) {
      const Operation& op = plan.list.operations[i];
      const auto step = std::ranges::find(plan.schedule.steps, i, &DatedStep::operation);
      REQUIRE(step != plan.schedule.steps.end());
      if (op.kind != OperationKind::sand_between && op.kind != OperationKind::coat) continue;
      if (below_is_on && (op.kind == OperationKind::sand_between || !sanded)) {
        const Coating& under = plan.job.coatings[below];
        const Stage stage = op.grit ? Stage::sand : Stage::recoat;
        // Rule 1: never sooner than the label says.
        CHECK(to_duration(step->begin() - *below_is_on) + minutes(1e-6) >=
              under.label_after[index_of(stage)]->value);
      }
      sanded = op.kind == OperationKind::sand_between;
      if (op.kind != OperationKind::coat) continue;
      below_is_on = step->dries_from;
      below = *op.coating;
    }
  }
}

TEST_CASE("every class advises a test board, two-part and melting ones what is theirs") {
  for (const Coating& coating : testing::sample_job().data.classes) {
    CAPTURE(coating.class_key);
    const auto advises = [&](const char* key) {
      const auto& keys = coating.words.advice;
      return std::find(keys.begin(), keys.end(), key) != keys.end();
    };
    CHECK(advises("test_board"));        // rule 12
    CHECK(advises("acclimatise"));       // rule 7
    CHECK(advises("holes_and_masks"));   // rule 11
    CHECK(advises("people_and_quiet"));  // rule 18
    CHECK(std::ranges::count_if(coating.words.advice, [](const std::string& key) {
            return key.starts_with("repair_");
          }) == 1);  // rule 17
    CHECK(advises("repair_melting") ==
          (coating.coats_a_day_max.has_value() && coating.builds_film));
    CHECK(advises("repair_rubbed") == advises("rubbed_oil"));
    CHECK(advises("mixed_pots") == coating.pot_life.has_value());
    CHECK(advises("rubbed_oil") == (coating.wipe_off_after.has_value() && !coating.needs_top_coat));
    CHECK(advises("keep_from_frost") == coating.raises_grain);
    CHECK(advises("out_of_the_sun") == (coating.dries_by_oxidation && coating.builds_film));
    if (coating.flash_point && coating.flash_point->value < celsius(100))
      CHECK(advises("heat_and_vapour"));  // rule 15
  }
}

}  // namespace
}  // namespace tackfree
