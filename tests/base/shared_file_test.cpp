#include "tackfree/base/shared_file.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <thread>

#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

using namespace tackfree;

namespace {

namespace fs = std::filesystem;

/// A folder with one file to share, gone at the end.
struct SharedCase {
  SharedCase() {
    fs::remove_all(folder);
    fs::create_directories(folder);
  }
  SharedCase(const SharedCase&) = delete;
  SharedCase& operator=(const SharedCase&) = delete;
  ~SharedCase() { fs::remove_all(folder); }

  void put(std::string_view text) const { std::ofstream(path, std::ios::binary) << text; }
  std::string text() const {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  fs::path folder = fs::temp_directory_path() / ("tackfree_shared_" + std::to_string(::getpid()));
  fs::path path = folder / "shelf.json";
};

std::optional<std::string> one_more(const std::string& text) { return text + "x"; }

}  // namespace

TEST_CASE("the first to write makes the file, and the next sees what it wrote") {
  const SharedCase shared;
  Problems problems;
  CHECK(rewrite_shared(shared.path, one_more, problems));
  CHECK(rewrite_shared(shared.path, one_more, problems));
  CHECK(shared.text() == "xx");
  CHECK(problems.empty());
}

TEST_CASE("what is given up leaves the file as it is, and makes none") {
  const SharedCase shared;
  Problems problems;
  const auto give_up = [](const std::string&) -> std::optional<std::string> { return {}; };
  CHECK_FALSE(rewrite_shared(shared.path, give_up, problems));
  CHECK_FALSE(fs::exists(shared.path));
  shared.put("as it is");
  CHECK_FALSE(rewrite_shared(shared.path, give_up, problems));
  CHECK(shared.text() == "as it is");
  CHECK(problems.empty());
}

TEST_CASE("a text that stays the same is not written again") {
  const SharedCase shared;
  shared.put("the same");
  const auto before = fs::last_write_time(shared.path) - std::chrono::hours(1);
  fs::last_write_time(shared.path, before);
  Problems problems;
  CHECK(rewrite_shared(
      shared.path, [](const std::string& text) { return std::optional(text); }, problems));
  CHECK(fs::last_write_time(shared.path) == before);
}

// Each rewriting puts another file in the place of the one that is locked.
TEST_CASE("of writers at the same time none loses what another wrote") {
  const SharedCase shared;
  constexpr int writings = 100;
  const auto write = [&] {
    for (int i = 0; i < writings; ++i) {
      Problems problems;
      rewrite_shared(shared.path, one_more, problems);
    }
  };
  std::thread first(write), second(write), third(write);
  first.join();
  second.join();
  third.join();
  CHECK(shared.text() == std::string(3 * writings, 'x'));
}

TEST_CASE("a file that stays locked, and a folder, are told as they are") {
  const SharedCase shared;
  shared.put("locked");
  const int other = ::open(shared.path.c_str(), O_RDONLY | O_CLOEXEC);
  REQUIRE(::flock(other, LOCK_EX) == 0);
  Problems problems;
  CHECK_FALSE(rewrite_shared(shared.path, one_more, problems, {{}, std::chrono::milliseconds(30)}));
  ::close(other);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].wanted.find("another program keeps it locked") != std::string::npos);
  CHECK_FALSE(rewrite_shared(shared.folder, one_more, problems));
  REQUIRE(problems.size() == 2);
  CHECK(problems[1].file == shared.folder.string());
  CHECK(shared.text() == "locked");
}
