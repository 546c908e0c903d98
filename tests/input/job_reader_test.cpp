#include "tackfree/input/job_reader.hpp"

#include "tackfree/input/starter_job.hpp"

#include <filesystem>

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("the demo and the starter job are read without a problem") {
  const std::filesystem::path root = TACKFREE_ROOT;
  for (const char* name : {"data/demo/hall_bench/hall_bench.json", "data/starter/job.json"}) {
    CAPTURE(name);
    Problems problems;
    const auto job = read_job(root / name, std::nullopt, problems);
    for (const Problem& problem : problems) MESSAGE(to_text(problem));
    CHECK(job);
    CHECK(problems.empty());
  }
}
