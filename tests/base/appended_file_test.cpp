#include "tackfree/base/appended_file.hpp"

#include <algorithm>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <set>
#include <sstream>
#include <thread>

#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace tackfree;

namespace {

/// A file of a name of its own, gone at the end.
struct ScratchFile {
  explicit ScratchFile(const std::string& name)
      : path(std::filesystem::temp_directory_path() / ("tackfree_appended_" + name)) {
    clear();
  }
  ScratchFile(const ScratchFile&) = delete;
  ScratchFile& operator=(const ScratchFile&) = delete;
  ~ScratchFile() { clear(); }
  void clear() const {
    std::filesystem::remove(path);
    std::filesystem::remove(beside());
  }
  std::filesystem::path beside() const { return path.string() + ".torn"; }
  void put(std::string_view text) const { std::ofstream(path, std::ios::binary) << text; }
  static std::string text(const std::filesystem::path& of) {
    std::ifstream file(of, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  std::filesystem::path path;
};

bool ends_in_full_stop(const std::string& line) { return line.ends_with('.'); }

bool append(const std::filesystem::path& path, const std::string& line) {
  Problems problems;
  return append_line(
      path, {[&](std::string_view) { return std::optional(line); }, ends_in_full_stop}, problems);
}

}  // namespace

TEST_CASE("a file that is not there yet is read as empty and made by the first line") {
  const ScratchFile file("first");
  Problems problems;
  CHECK(read_appended(file.path, problems)->lines.empty());
  CHECK(append(file.path, "one"));
  CHECK(append(file.path, "two"));
  CHECK(ScratchFile::text(file.path) == "one\ntwo\n");
  CHECK(problems.empty());
}

TEST_CASE("a file cut at any byte loses no line before the cut, and takes the next one whole") {
  const std::string whole = "first line\nsecond\nthird, the last\n";
  for (std::size_t cut = 0; cut <= whole.size(); ++cut) {
    CAPTURE(cut);
    const ScratchFile file("cut");
    file.put(whole.substr(0, cut));
    const std::string kept = whole.substr(0, whole.substr(0, cut).rfind('\n') + 1);
    Problems problems;
    const auto read = read_appended(file.path, problems);
    REQUIRE(read);
    CHECK(read->lines == kept);
    CHECK(read->lines + read->torn == whole.substr(0, cut));
    CHECK(append(file.path, "next"));
    CHECK(ScratchFile::text(file.path) == kept + "next\n");
    const std::string torn = whole.substr(kept.size(), cut - kept.size());
    CHECK(ScratchFile::text(file.beside()) == (torn.empty() ? "" : torn + "\n"));
  }
}

TEST_CASE("two writers at once lose no line, and each sees the lines before its own") {
  const ScratchFile file("two");
  constexpr int each = 150;
  const auto write = [&] {
    Problems problems;
    for (int i = 0; i < each; ++i)
      append_line(
          file.path,
          {[](std::string_view lines) {
             return std::optional(std::to_string(std::count(lines.begin(), lines.end(), '\n') + 1));
           },
           ends_in_full_stop},
          problems);
  };
  std::thread first(write), second(write);
  first.join();
  second.join();
  std::istringstream in(ScratchFile::text(file.path));
  std::set<int> numbers;
  for (std::string line; std::getline(in, line);) numbers.insert(std::stoi(line));
  CHECK(numbers.size() == 2 * each);
  CHECK(*numbers.rbegin() == 2 * each);
}

/// Starts a process that adds lines and tells the number of each on `told` once it is confirmed.
pid_t start_writer(const std::filesystem::path& path, int told) {
  const pid_t child = ::fork();
  if (child != 0) return child;
  Problems problems;
  while (true) {
    int number = 0;
    const bool confirmed =
        append_line(path,
                    {[&](std::string_view lines) {
                       number = static_cast<int>(std::count(lines.begin(), lines.end(), '\n')) + 1;
                       return std::optional(std::to_string(number) + ".");
                     },
                     ends_in_full_stop},
                    problems);
    if (!confirmed || ::write(told, &number, sizeof number) != sizeof number) ::_exit(1);
  }
}

TEST_CASE("writers killed at 200 random points lose no line that they confirmed") {
  const ScratchFile file("killed");
  std::minstd_rand random(5);
  std::set<int> confirmed;
  for (int round = 0; round < 100; ++round) {
    int told[2];
    REQUIRE(::pipe(told) == 0);
    // Two at once, each killed while it writes.
    const pid_t writers[2] = {start_writer(file.path, told[1]), start_writer(file.path, told[1])};
    ::close(told[1]);
    for (const pid_t writer : writers) {
      std::this_thread::sleep_for(std::chrono::microseconds(random() % 6000));
      ::kill(writer, SIGKILL);
      ::waitpid(writer, nullptr, 0);
    }
    for (int number = 0; ::read(told[0], &number, sizeof number) == sizeof number;)
      CHECK(confirmed.insert(number).second);
    ::close(told[0]);
  }
  CHECK(append(file.path, "end."));
  std::istringstream in(ScratchFile::text(file.path));
  std::set<int> kept;
  for (std::string line; std::getline(in, line);) {
    REQUIRE(line.ends_with('.'));
    if (line != "end.") kept.insert(std::stoi(line));
  }
  CHECK(confirmed.size() > 100);
  for (const int number : confirmed) CHECK(kept.contains(number));
}

TEST_CASE("a last line that lacks only its line feed is kept and ended") {
  const ScratchFile file("unended");
  file.put("one\ntwo.");
  CHECK(append(file.path, "three"));
  CHECK(ScratchFile::text(file.path) == "one\ntwo.\nthree\n");
  CHECK_FALSE(std::filesystem::exists(file.beside()));
}

TEST_CASE("a writer that gives up leaves the file as it was") {
  const ScratchFile file("gave_up");
  file.put("one\nhalf");
  Problems problems;
  CHECK_FALSE(append_line(
      file.path, {[](std::string_view) { return std::optional<std::string>(); }, ends_in_full_stop},
      problems));
  CHECK(problems.empty());
  CHECK(ScratchFile::text(file.path) == "one\nhalf");
}

TEST_CASE("a file that cannot be written is a problem that names it") {
  Problems problems;
  CHECK_FALSE(append_line(
      "/no such folder/x.jsonl",
      {[](std::string_view) { return std::optional<std::string>("x"); }, ends_in_full_stop},
      problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "/no such folder/x.jsonl");
  CHECK_FALSE(read_appended("/", problems));
}

TEST_CASE("a lock that is let go is waited for, and that is said once and at once") {
  const ScratchFile file("locked");
  REQUIRE(append(file.path, "one."));
  const int held = ::open(file.path.c_str(), O_RDONLY);
  REQUIRE(::flock(held, LOCK_EX) == 0);
  int told = 0;
  // The wait is over once it was told.
  const LockPatience patience{[&](const std::filesystem::path& path) {
                                CHECK(path == file.path);
                                ++told;
                                ::flock(held, LOCK_UN);
                              },
                              std::chrono::seconds(10)};
  Problems problems;
  CHECK(read_appended(file.path, problems, patience)->lines == "one.\n");
  CHECK(told == 1);
  CHECK(problems.empty());
  ::close(held);
}

TEST_CASE("a lock that is never let go is given up with one problem, and nothing is written") {
  const ScratchFile file("kept");
  REQUIRE(append(file.path, "one."));
  const int held = ::open(file.path.c_str(), O_RDONLY);
  REQUIRE(::flock(held, LOCK_SH) == 0);
  const LockPatience patience{{}, std::chrono::milliseconds(60)};
  Problems problems;
  const auto two = [](std::string_view) { return std::optional<std::string>("two."); };
  CHECK_FALSE(append_line(file.path, {two, ends_in_full_stop}, problems, patience));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].wanted.find("another program keeps it locked") != std::string::npos);
  CHECK(ScratchFile::text(file.path) == "one.\n");
  // Others may read it meanwhile.
  CHECK(read_appended(file.path, problems, patience)->lines == "one.\n");
  ::close(held);
}

TEST_CASE("a device and a pipe are no files that lines can be added to, and are not waited for") {
  const ScratchFile pipe("pipe");
  REQUIRE(::mkfifo(pipe.path.c_str(), 0600) == 0);
  for (const std::filesystem::path& path : {std::filesystem::path("/dev/null"), pipe.path}) {
    CAPTURE(path);
    Problems problems;
    CHECK_FALSE(append(path, "one."));
    CHECK_FALSE(read_appended(path, problems));
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].wanted.find("name a file") != std::string::npos);
  }
}
