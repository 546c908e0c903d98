#include "tackfree/input/room_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::optional<ConditionedAir> conditioned_of(const std::string& text, Problems& problems) {
  const auto tree = parse_json(text, "job.json", problems);
  REQUIRE(tree);
  JsonCursor cursor(*tree, "conditioned[0]", "job.json", problems);
  return read_conditioned_air(cursor, Zone::named("America/New_York").value());
}

std::string only_problem_of_conditioned(const std::string& text) {
  Problems problems;
  CHECK_FALSE(conditioned_of(text, problems));
  INFO(all_text(problems));
  REQUIRE(problems.size() == 1);
  return problems[0].wanted;
}

}  // namespace

TEST_CASE("warming and drying are read with their local hours, or for the whole plan") {
  Problems problems;
  const auto evening = conditioned_of(
      R"({"from": "2027-01-14T17:00", "until": "2027-01-15T06:00", "warmer_f": 9,
          "heater_is": "sealed"})",
      problems);
  REQUIRE(evening);
  CHECK(evening->time == Interval{parse_instant("2027-01-14T22:00Z").value(),
                                  parse_instant("2027-01-15T11:00Z").value()});
  CHECK(evening->warmer.in(kelvins) == doctest::Approx(5));
  CHECK(evening->heater == HeaterKind::sealed);
  const auto whole = conditioned_of(R"({"drier_pct": 15})", problems);
  REQUIRE(whole);
  CHECK_FALSE(whole->time);
  CHECK(whole->drier == humidity_percent(15));
  CHECK_MESSAGE(problems.empty(), all_text(problems));
}

TEST_CASE("what changes nothing, has one end, or ends before it begins is a mistake") {
  CHECK(holds(only_problem_of_conditioned(R"({"heater_is": "sealed"})"), "drier_pct is needed"));
  CHECK(holds(only_problem_of_conditioned(R"({"warmer_c": 3, "from": "2027-01-14T17:00"})"),
              "wanted both ends"));
  CHECK(holds(only_problem_of_conditioned(
                  R"({"warmer_c": 3, "from": "2027-01-14T17:00", "until": "2027-01-14T17:00"})"),
              "after"));
  CHECK(holds(only_problem_of_conditioned(R"({"warmer_c": 3, "warmer_f": 3})"), "wanted one of"));
}
