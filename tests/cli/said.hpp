#pragma once

#include "tackfree/cli/run.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <unistd.h>

namespace tackfree::testing {

namespace fs = std::filesystem;

/// A folder of its own, with the starter job or the demo in it.
struct Folder {
  fs::path path = fs::temp_directory_path() / ("tackfree_run_" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { fs::remove_all(path); }

  std::string in(const char* name) const { return (path / name).string(); }
};

struct Said {
  int code;
  std::string out, err;
};

inline Said said(const std::vector<std::string>& arguments) {
  std::ostringstream out, err;
  const int code = run(arguments, out, err);
  return {code, out.str(), err.str()};
}

inline std::string text_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The starter job in a folder of that name.
inline std::string starter_in(const Folder& folder, const char* name = "mine") {
  REQUIRE(said({"start", folder.in(name)}).code == exit_done);
  return (folder.path / name / "job.json").string();
}

/// The demo in a copy: a plan is kept beside its job.
inline std::string demo_in(const Folder& folder) {
  fs::copy(TACKFREE_ROOT "/data/demo/hall_bench", folder.path / "demo");
  return (folder.path / "demo" / "hall_bench.json").string();
}

inline const std::string frozen_job = TACKFREE_ROOT "/tests/transcripts/jobs/frozen.json";

}  // namespace tackfree::testing
