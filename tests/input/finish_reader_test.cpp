#include "tackfree/input/finish_reader.hpp"

#include "input/bench_copy.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("names that do not fit together are named, in the job and in the parts list") {
  BenchCopy bench;
  bench.text = replaced(bench.text, "{ \"name\": \"frame\", \"system\": \"bench varnish\"",
                        "{ \"name\": \"farme\", \"system\": \"bench varnsih\"");
  const Problems problems = bench.read_bad();
  INFO(all_text(problems));
  REQUIRE(problems.size() == 7);
  CHECK(problems[0].key == "batches[1].system");
  CHECK(problems[0].hint == "did you mean \"bench varnish\"?");
  for (std::size_t i = 1; i < 6; ++i) {
    CHECK(problems[i].file == "bench/hall_bench_parts.csv");
    CHECK(problems[i].key == "batch");
    CHECK(problems[i].found == "frame");
    CHECK(problems[i].hint == "did you mean \"farme\"?");
  }
  CHECK(problems[1].line == 5);
  CHECK(problems[6].found == "farme");
  CHECK(holds(problems[6].wanted, "has no parts"));
  CHECK(problems[6].line == line_of(bench.text, "\"farme\""));
}

TEST_CASE("names that differ in case and signs only are refused: they share calendar entries") {
  BenchCopy bench;
  bench.text = replaced(bench.text, "{ \"name\": \"frame\"", "{ \"name\": \"Seat and Shelf\"");
  const Problems problems = bench.read_bad();
  REQUIRE_FALSE(problems.empty());
  CHECK(problems[0].found == "Seat and Shelf");
  CHECK(holds(problems[0].wanted, "the same but for case and signs"));
}

TEST_CASE("a batch may come after one that stands before it in the list, not after itself") {
  const std::string frame = "{ \"name\": \"frame\", \"system\": \"bench varnish\"";
  BenchCopy bench;
  bench.text = replaced(bench.text, frame, frame + ", \"after\": \"seat and shelf\"");
  const Job job = bench.read_good();
  CHECK(job.batches[1].after == "seat and shelf");
  CHECK(job.batches[0].after.empty());
  BenchCopy circle;
  circle.text = replaced(circle.text, frame, frame + ", \"after\": \"frame\"");
  const Problems refused = circle.read_bad();
  REQUIRE(refused.size() == 1);
  CHECK(refused[0].key == "batches[1].after");
}

TEST_CASE("a system's own thinning is the person's practice, not a measurement") {
  BenchCopy bench;
  const Job job = bench.read_good();
  const auto& thinning = job.systems[0].steps[0].first_coat_thinner;
  REQUIRE(thinning);
  CHECK(thinning->origin == Origin::practice);
  CHECK(holds(thinning->source, "your own"));
}

TEST_CASE("what earlier jobs have taught is read in pairs") {
  const std::string name = "\"name\": \"oil varnish\",";
  BenchCopy bench;
  bench.text = replaced(bench.text, name,
                        name + " \"earlier_jobs\": {\"need_factor\": 1.09, \"need_coats\": 3},");
  const Job job = bench.read_good();
  CHECK(job.coatings[0].need_taught.factor == doctest::Approx(1.09));
  CHECK(job.coatings[0].need_taught.coats == 3);
  CHECK(job.coatings[0].drying_taught.coats == 0);
  BenchCopy half;
  half.text = replaced(half.text, name,
                       name + " \"earlier_jobs\": {\"need_factor\": 9, \"drying_coats\": 2},");
  const Problems problems = half.read_bad();
  INFO(all_text(problems));
  REQUIRE(problems.size() == 3);
  CHECK(holds(all_text(problems), "wanted a number from 0.2 to 5"));
  CHECK(holds(all_text(problems), "wanted \"drying_factor\" and \"drying_coats\" together"));
}
