#include "tackfree/input/follows_reader.hpp"

#include "input/text_checks.hpp"
#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

/// The sample job with one step of each class, in order.
Job job_of(const std::vector<std::string>& classes) {
  Job job = testing::sample_job();
  job.coatings.clear();
  job.systems[0].steps.clear();
  for (const std::string& key : classes) {
    job.coatings.push_back(testing::named(testing::class_of(job.data, key), key));
    job.systems[0].steps.push_back({key, key, "brush", std::nullopt, std::nullopt, 7});
  }
  return job;
}

Problems problems_of(const Job& job) {
  Problems problems;
  check_systems_hold(job, problems);
  return problems;
}

TEST_CASE("lacquer and solvent two-part finishes over oil are refused with a remedy (rule 5)") {
  for (const char* under : {"oil_polyurethane", "long_oil_varnish", "drying_oil", "hardwax_oil"})
    for (const char* over : {"nitrocellulose_lacquer", "two_component_polyurethane"}) {
      CAPTURE(under);
      CAPTURE(over);
      const Problems problems = problems_of(job_of({under, over}));
      REQUIRE(problems.size() == 1);
      CHECK(problems[0].line == 7);
      CHECK(problems[0].found == over);
      CHECK(holds(problems[0].wanted, "lift"));
      CHECK(holds(problems[0].hint, "dewaxed shellac"));
    }
  CHECK(problems_of(job_of({"oil_polyurethane", "shellac", "nitrocellulose_lacquer"})).empty());
}

TEST_CASE(
    "polyurethane over wax is refused: a stearated sealer, or shellac unless its tin says "
    "dewaxed") {
  CHECK(problems_of(job_of({"sanding_sealer", "waterborne_polyurethane"})).size() == 1);
  CHECK(problems_of(job_of({"sanding_sealer", "nitrocellulose_lacquer"})).empty());
  Job job = job_of({"shellac", "oil_polyurethane"});
  CHECK(problems_of(job).size() == 1);
  job.coatings[0].contains_wax = false;
  CHECK(problems_of(job).empty());
  job = job_of({"sanding_sealer", "waterborne_polyurethane"});
  job.coatings[0].contains_wax = false;
  CHECK(problems_of(job).empty());
}

TEST_CASE("stain over a film and oil over a film are refused, under them they are not") {
  CHECK(problems_of(job_of({"oil_polyurethane", "oil_stain", "oil_polyurethane"})).size() == 1);
  CHECK(problems_of(job_of({"waterborne_polyurethane", "drying_oil"})).size() == 1);
  CHECK(problems_of(job_of({"oil_stain", "oil_polyurethane"})).empty());
}

TEST_CASE("a system that ends with stain or sealer is no finish") {
  for (const char* last : {"oil_stain", "sanding_sealer"}) {
    const Problems problems = problems_of(job_of({last}));
    REQUIRE(problems.size() == 1);
    CHECK(holds(problems[0].wanted, "no finish alone"));
  }
}

TEST_CASE("a pair that no rule names is not refused, and one class always follows itself") {
  const Job job = job_of({"nitrocellulose_lacquer", "conversion_varnish"});
  CHECK(follow_rule(job.data, job.coatings[0], job.coatings[1]) == nullptr);
  CHECK(problems_of(job).empty());
  for (const Coating& coating : job.data.classes)
    if (!coating.needs_top_coat)
      CHECK(problems_of(job_of({coating.class_key, coating.class_key})).empty());
}

TEST_CASE("a rule about a class that is not there is a problem with its line and a hint") {
  Problems problems;
  const auto tree = parse_json(
      "{\"odd\": {\"under\": [\"shelac\"], \"over\": [], \"verdict\": \"refuse\",\n"
      " \"say\": \"no\"}}",
      "follows.json", problems);
  REQUIRE(tree);
  JsonCursor file(*tree, "", "follows.json", problems);
  read_follow_rules(file, testing::sample_job().data.classes, SourceNames{});
  REQUIRE(problems.size() == 2);
  CHECK(holds(problems[0].hint, "shellac"));
  CHECK(holds(problems[1].key, "remedy"));
}

}  // namespace
}  // namespace tackfree
