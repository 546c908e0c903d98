// Whole-program transcripts: each *.transcript holds commands, what they print and their exit code.
// A line "$ tackfree ..." is run by the shell in a copy of the transcripts' folder, with the demos
// where they lie from there; the lines up to "exit N" are what standard output and error must be
// together. "$copy" is an empty folder for commands that write. Both are the transcript's own and
// gone at its end. TACKFREE_REWRITE=1 writes what was printed.
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <sys/wait.h>

namespace tackfree {
namespace {

namespace fs = std::filesystem;

const fs::path folder = fs::path(TACKFREE_ROOT) / "tests" / "transcripts";

std::string text_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

struct Ran {
  std::string printed;
  int exit_code = 0;
};

Ran ran(const std::string& command, const fs::path& home) {
  const std::string line = "copy='" + (home / "copy").string() + "' && cd '" +
                           (home / "tests" / "transcripts").string() +
                           "' && tackfree() { '" TACKFREE_PROGRAM "' \"$@\"; } && { " + command +
                           "; } 2>&1";
  Ran result;
  FILE* pipe = ::popen(line.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::array<char, 4096> piece{};
  while (const std::size_t count = std::fread(piece.data(), 1, piece.size(), pipe))
    result.printed.append(piece.data(), count);
  const int status = ::pclose(pipe);
  REQUIRE(WIFEXITED(status));  // it did not crash
  result.exit_code = WEXITSTATUS(status);
  return result;
}

/// The transcript as it would be if every command were run now.
std::string replayed(const std::string& transcript, const fs::path& home) {
  std::istringstream in(transcript);
  std::string now;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("# ") || line.empty()) now += line + "\n";
    if (!line.starts_with("$ ")) continue;
    const Ran result = ran(line.substr(2), home);
    now += line + "\n" + result.printed + "exit " + std::to_string(result.exit_code) + "\n";
    for (std::string old; std::getline(in, old) && !old.starts_with("exit ");) continue;
  }
  return now;
}

void compare(const std::string& name) {
  const fs::path path = folder / name;
  const std::string expected = text_of(path);
  REQUIRE_FALSE(expected.empty());
  std::string home = (fs::temp_directory_path() / "tackfree_XXXXXX").string();
  REQUIRE(::mkdtemp(home.data()) != nullptr);
  fs::create_directories(fs::path(home) / "copy");
  for (const char* part : {"tests/transcripts", "data/demo"}) {
    fs::create_directories(fs::path(home) / part);
    fs::copy(fs::path(TACKFREE_ROOT) / part, fs::path(home) / part, fs::copy_options::recursive);
  }
  const std::string now = replayed(expected, home);
  fs::remove_all(home);
  if (std::getenv("TACKFREE_REWRITE") != nullptr) std::ofstream(path, std::ios::binary) << now;
  std::istringstream a(expected), b(now);
  std::string wanted, got;
  for (int line = 1; std::getline(b, got) || b.gcount() > 0; ++line) {
    if (!std::getline(a, wanted)) wanted = "(nothing)";
    CAPTURE(line);
    REQUIRE(got == wanted);
  }
  CHECK(now == expected);
}

TEST_CASE("the demo plan prints as kept") { compare("hall_bench.transcript"); }
TEST_CASE("a closed garage raises the word, and a lacquer sprayed in a closet is stopped") {
  compare("fumes.transcript");
}
TEST_CASE("widths, units, clocks and the files beside the plan are as asked for") {
  compare("outputs.transcript");
}
TEST_CASE("a week with a late coat, a cold night, a tacky finish and an extra tin goes as kept") {
  compare("week.transcript");
}
TEST_CASE("work that nobody logged is asked about, and the next plan knows the last one") {
  compare("evenings.transcript");
}
TEST_CASE("every mistake in a job is named in one run") { compare("mistakes.transcript"); }
TEST_CASE("a job that cannot be planned whole says which step and rule, and prints the rest") {
  compare("not_plannable.transcript");
}
TEST_CASE("the areas of every kind of part and feature print as kept") {
  compare("areas.transcript");
}
TEST_CASE("a shop of two with rooms and dates is planned, and what cannot hold together is named") {
  compare("shop.transcript");
}
TEST_CASE("what one job leaves on the shared shelf the next one does not buy") {
  compare("shelf.transcript");
}
TEST_CASE("the command line explains itself and refuses what it does not know") {
  compare("command_line.transcript");
}

/// In one line, without the breaks and columns of the page.
std::string unbroken(const std::string& text) {
  std::istringstream in(text);
  std::string all;
  for (std::string word; in >> word;) all += (all.empty() ? "" : " ") + word;
  return all;
}

// Vapour that harms or burns may be in the room longer than anybody smells it.
TEST_CASE("nothing that is printed advises less air") {
  const std::regex less(
      "(air|airing|open|opened|ventilat\\w*|window|door) (it |the room )?(for )?(less|shorter)\\b|"
      "less (long|air|airing)\\b|(shut|close) (the |your )?(door|window)s? (sooner|earlier)",
      std::regex::icase);
  CHECK(std::regex_search("coat less at a time; air for less long; a milder day", less));
  CHECK_FALSE(std::regex_search("coat less at a time; use more air", less));
  int read = 0;
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (entry.path().extension() != ".transcript") continue;
    const std::string text = unbroken(text_of(entry.path()));
    std::smatch found;
    const bool advised = std::regex_search(text, found, less);
    CHECK_MESSAGE(!advised, entry.path().filename().string(), ": ", found.str());
    ++read;
  }
  CHECK(read >= 10);
  for (const char* demo : {"cabinet_fronts", "hall_bench", "table_order", "wall_shelves"}) {
    const std::string job =
        std::string(TACKFREE_ROOT) + "/data/demo/" + demo + "/" + demo + ".json";
    for (const char* of : {"plan --keep no", "tonight"}) {
      const Ran result = ran(std::string("tackfree ") + of + " " + job, TACKFREE_ROOT);
      const std::string text = unbroken(result.printed);
      CHECK(text.size() > 200);
      CHECK_MESSAGE(!std::regex_search(text, less), demo);
    }
  }
}

}  // namespace
}  // namespace tackfree
