// Bench copy: an invented bench with its parts and two days of air, where a test may spoil it.
#pragma once

#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/input/job_reader.hpp"

#include <optional>
#include <string>
#include <utility>

#include "input/text_checks.hpp"

namespace tackfree {

inline const std::filesystem::path root = TACKFREE_ROOT;

inline std::string file_text(const std::filesystem::path& path) {
  Problems problems;
  return FilesOnDisk().text(path, problems).value();
}

/// A bench much like the demo, as `bench/job.json`, its job and parts free to be changed first.
struct BenchCopy {
  FilesInMemory files;
  std::string text = file_text(root / "tests/input/bench/hall_bench.json");
  std::string parts = file_text(root / "tests/input/bench/hall_bench_parts.csv");

  std::optional<Job> read(Problems& problems) {
    files.put("bench/garage_hours.csv", file_text(root / "tests/input/bench/garage_hours.csv"));
    files.put("bench/hall_bench_parts.csv", parts);
    files.put("bench/job.json", text);
    return read_job(files, "bench/job.json", std::nullopt, problems);
  }
  Job read_good() {
    Problems problems;
    auto job = read(problems);
    INFO(all_text(problems));
    REQUIRE(job);
    CHECK(problems.empty());
    return std::move(*job);
  }
  Problems read_bad() {
    Problems problems;
    CHECK_FALSE(read(problems));
    return problems;
  }
};

inline Job read_file(const char* name) {
  Problems problems;
  auto job = read_job(FilesOnDisk(), root / name, std::nullopt, problems);
  INFO(all_text(problems));
  REQUIRE(job);
  return std::move(*job);
}

}  // namespace tackfree
