#include "tackfree/input/tin_reader.hpp"

#include "input/bench_copy.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// A bench with another shelf, and with `thinners` before its systems.
struct TinBench : BenchCopy {
  explicit TinBench(const std::string& on_shelf, const std::string& thinners = "") {
    text = replaced(text, R"(["1/2 pt"])", on_shelf);
    if (!thinners.empty())
      text =
          replaced(text, "  \"systems\": [", "  \"thinners\": " + thinners + ",\n  \"systems\": [");
  }
};

Problem only_tin_problem(const std::string& on_shelf, const std::string& thinners) {
  const Problems problems = TinBench(on_shelf, thinners).read_bad();
  INFO(all_text(problems));
  REQUIRE(problems.size() == 1);
  return problems[0];
}

}  // namespace

TEST_CASE("a tin on the shelf is a volume, or a volume and the day it was opened") {
  const Job job =
      TinBench(R"(["1 pt", { "volume": "8 fl oz", "opened_on": "2026-12-01" }])").read_good();
  const auto& shelf = job.coatings.at(0).on_shelf;
  REQUIRE(shelf.size() == 2);
  CHECK(shelf[0].volume == us_pints(1));
  CHECK_FALSE(shelf[0].opened_on);
  CHECK(shelf[1].volume.in(us_fluid_ounces) == doctest::Approx(8));
  CHECK(iso_date(shelf[1].opened_on.value()) == "2026-12-01");
}

TEST_CASE("a volume beside a size is what the tin holds, and the size is then only its name") {
  BenchCopy bench;
  bench.text =
      replaced(bench.text, R"("size": "1 qt")", R"("size": "big one", "volume": "30 fl oz")");
  const auto tins = bench.read_good().coatings.at(0).tins;
  CHECK(tins.at(1).label == "big one");
  CHECK(tins.at(1).volume.in(us_fluid_ounces) == doctest::Approx(30));
  CHECK(tins.at(1).price == 24.0);
}

TEST_CASE("thinner has its own tins and shelf") {
  const Job job = TinBench(R"(["1/2 pt"])", R"([{ "name": "mineral spirits",
    "tins": [{ "size": "1 qt", "price": 9 }], "on_shelf": ["12 fl oz"] }])")
                      .read_good();
  REQUIRE(job.thinners.size() == 1);
  CHECK(job.thinners[0].name == "mineral spirits");
  CHECK(job.thinners[0].tins.at(0).price == 9.0);
  CHECK(job.thinners[0].on_shelf.at(0).volume.in(us_fluid_ounces) == doctest::Approx(12));
}

TEST_CASE("every mistake about tins has its place and what would be right") {
  struct Row {
    const char* shelf;
    const char* thinners;
    const char* key;
    const char* wanted;
  };
  const Row rows[] = {
      {R"("1 pt")", "", "coatings[0].on_shelf", "a list of volumes"},
      {R"([7])", "", "coatings[0].on_shelf[0]", "a volume in quotes, or {"},
      {R"([{ "opened_on": "2026-12-01" }])", "", "coatings[0].on_shelf[0].volume", "is missing"},
      {R"([{ "volume": "1 pnt" }])", "", "coatings[0].on_shelf[0].volume", "a volume"},
      {R"([{ "volume": "1 pt", "opened_on": "2026-13-01" }])", "",
       "coatings[0].on_shelf[0].opened_on", "a date from 1970 to 2037"},
      {R"([{ "volume": "1 pt", "opened": "2026-12-01" }])", "", "coatings[0].on_shelf[0].opened",
       "not a known key"},
      {"[]", R"([{ "name": "mineral spirit" }])", "thinners[0].name", "thinned or cleaned with"},
      {"[]", R"([{ "tins": [{ "size": "1 qt" }] }])", "thinners[0].name", "is missing"},
      {"[]", R"([{ "name": "mineral spirits" }, { "name": "mineral spirits" }])",
       "thinners[1].name", "stands in the list already"},
      {"[]", R"([{ "name": "mineral spirits", "on_shelf": [{ "volume": "1 pt" }] }])",
       "thinners[0].on_shelf[0]", "a volume in quotes"},
      {"[]", R"([{ "name": "mineral spirits", "tins": [{ "size": "big" }] }])",
       "thinners[0].tins[0].size", "a volume"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.key);
    const Problem problem = only_tin_problem(row.shelf, row.thinners);
    CHECK(problem.key == row.key);
    CHECK_MESSAGE(holds(problem.wanted, row.wanted), problem.wanted);
  }
  CHECK(holds(only_tin_problem("[]", R"([{ "name": "mineral spirit" }])").hint,
              "did you mean \"mineral spirits\"?"));
}
