// First screens: each demo, and each job of the transcripts that can be read, as `plan` prints it.
#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <sys/wait.h>

namespace tackfree {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_lines = 50;

struct Printed {
  std::vector<std::string> lines;
  int exit_code = 0;
};

Printed plan(const fs::path& job, const std::string& options) {
  const std::string line = "'" TACKFREE_PROGRAM "' plan '" + job.string() +
                           "' --keep no --width 80 " + options + " 2>/dev/null";
  FILE* pipe = ::popen(line.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string text;
  std::array<char, 4096> piece{};
  while (const std::size_t count = std::fread(piece.data(), 1, piece.size(), pipe))
    text.append(piece.data(), count);
  const int status = ::pclose(pipe);
  REQUIRE(WIFEXITED(status));
  Printed printed{{}, WEXITSTATUS(status)};
  std::istringstream lines(text);
  for (std::string each; std::getline(lines, each);) printed.lines.push_back(each);
  return printed;
}

/// Lines that begin with a signal word that must be on the first screen.
std::ptrdiff_t warnings_in(const Printed& printed) {
  return std::ranges::count_if(printed.lines, [](const std::string& line) {
    return line.starts_with("DANGER ") || line.starts_with("WARNING ");
  });
}

std::vector<fs::path> demos() {
  std::vector<fs::path> jobs;
  for (const auto& folder : fs::directory_iterator(fs::path(TACKFREE_ROOT) / "data" / "demo"))
    jobs.push_back(folder.path() / (folder.path().filename().string() + ".json"));
  return jobs;
}

std::vector<fs::path> transcript_jobs() {
  std::vector<fs::path> jobs;
  for (const auto& file :
       fs::directory_iterator(fs::path(TACKFREE_ROOT) / "tests" / "transcripts" / "jobs"))
    if (file.path().extension() == ".json") jobs.push_back(file.path());
  return jobs;
}

}  // namespace

TEST_CASE("the first screen of each demo has at most 50 lines, and a line for each warning") {
  REQUIRE(demos().size() >= 4);
  for (const fs::path& job : demos()) {
    CAPTURE(job);
    const Printed first = plan(job, "");
    CHECK(first.exit_code == 0);
    CHECK(first.lines.size() <= most_lines);
    CHECK(warnings_in(first) > 0);
    CHECK(warnings_in(first) == warnings_in(plan(job, "--only warnings")));
  }
}

TEST_CASE("no job has a first screen of more than 50 lines") {
  std::size_t planned = 0;
  for (const fs::path& job : transcript_jobs()) {
    const Printed first = plan(job, "");
    if (first.exit_code != 0 && first.exit_code != 3) continue;
    ++planned;
    CHECK_MESSAGE(first.lines.size() <= most_lines, job);
  }
  CHECK(planned > 3);
}

}  // namespace tackfree
