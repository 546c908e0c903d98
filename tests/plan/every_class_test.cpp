#include "tackfree/plan/make_plan.hpp"

#include <algorithm>
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

TEST_CASE("how many coats a class gets on a table top for normal wear") {
  const std::map<std::string, int> coats{{"oil_polyurethane", 3},
                                         {"long_oil_varnish", 4},
                                         {"waterborne_polyurethane", 4},
                                         {"waterborne_two_component", 3},
                                         {"nitrocellulose_lacquer", 4},
                                         {"two_component_polyurethane", 3},
                                         {"hardwax_oil", 2},
                                         {"drying_oil", 2}};
  for (const Usual& usual : usual_ways) {
    const auto wanted = coats.find(usual.class_key);
    if (wanted == coats.end()) continue;
    CAPTURE(usual.class_key);
    const Plan plan = plan_for(usual, usual.methods.front(), Sides::on_points);
    CHECK(plan.volumes.films[0].build.coats == wanted->second);
    CHECK(plan.volumes.films[0].verdict == StepFilm::Verdict::good);
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
