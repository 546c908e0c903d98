#include "tackfree/base/text_file.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>

#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tackfree {
namespace {

namespace fs = std::filesystem;

/// A folder of its own, gone at the end.
struct Folder {
  fs::path path = fs::temp_directory_path() / ("tackfree_text_file_" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  ~Folder() { fs::remove_all(path); }
};

TEST_CASE("what is written is read back, byte for byte, and replaces what was there") {
  const Folder folder;
  const fs::path file = folder.path / "plan.json";
  Problems problems;
  const std::string text("a\0b\r\nü", 7);
  REQUIRE(write_text_file(file, "old and longer than the new text", problems));
  REQUIRE(write_text_file(file, text, problems));
  CHECK(read_text_file(file, problems) == text);
  CHECK(problems.empty());
  // No temporary file is left behind.
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
}

TEST_CASE("a missing file, a folder and a bad place are problems with the file's name") {
  const Folder folder;
  Problems problems;
  CHECK_FALSE(read_text_file(folder.path / "none.json", problems));
  CHECK_FALSE(read_text_file(folder.path, problems));
  CHECK_FALSE(write_text_file(folder.path / "no" / "such" / "x.json", "x", problems));
  REQUIRE(problems.size() == 3);
  CHECK(to_text(problems[0]).find("none.json: cannot be read (No such file") != std::string::npos);
  CHECK(problems[1].wanted == "is a folder; name a file");
  CHECK(problems[2].wanted.starts_with("cannot be written"));
}

TEST_CASE("a write that fails leaves the old text and no temporary file") {
  const Folder folder;
  const fs::path target = folder.path / "taken";
  fs::create_directories(target / "inside");  // a folder cannot be replaced by a file
  Problems problems;
  CHECK_FALSE(write_text_file(target, "x", problems));
  CHECK(problems.size() == 1);
  CHECK(fs::exists(target / "inside"));
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
}

TEST_CASE("a pipe, a device and standard input are refused at once as files to read") {
  const Folder folder;
  const fs::path pipe = folder.path / "pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  Problems problems;
  CHECK_FALSE(read_text_file(pipe, problems));
  CHECK_FALSE(read_text_file("/dev/zero", problems));
  CHECK_FALSE(read_text_file("-", problems));
  REQUIRE(problems.size() == 3);
  CHECK(problems[0].wanted == "is a pipe; name a file");
  CHECK(problems[1].wanted == "is a device; name a file");
  CHECK(problems[2].wanted.find("nothing is read from standard input") != std::string::npos);
}

TEST_CASE("a link that is written to stays a link, and what it leads to has the new text") {
  const Folder folder;
  fs::create_directories(folder.path / "kept");
  const fs::path file = folder.path / "kept" / "plan.json", link = folder.path / "plan.json";
  std::ofstream(file) << "old";
  fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink("kept/plan.json", link);
  Problems problems;
  REQUIRE(write_text_file(link, "new", problems));
  CHECK(fs::is_symlink(link));
  CHECK(read_text_file(file, problems) == "new");
  CHECK(fs::status(file).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
  fs::remove(file);
  REQUIRE(write_text_file(link, "again", problems));  // what it leads to is not there yet
  CHECK(fs::is_symlink(link));
  CHECK(read_text_file(file, problems) == "again");
  CHECK(problems.empty());
  fs::create_symlink("ring", folder.path / "ring");
  CHECK_FALSE(write_text_file(folder.path / "ring", "x", problems));
  CHECK(fs::is_symlink(folder.path / "ring"));
}

TEST_CASE("a pipe that is written to takes the text and stays what it is") {
  const Folder folder;
  const fs::path pipe = folder.path / "pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  Problems problems;
  CHECK_FALSE(write_text_file(pipe, "nobody reads this", problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].wanted.find("nobody reads") != std::string::npos);
  const int reader = ::open(pipe.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC);
  REQUIRE(write_text_file(pipe, "a plan", problems));
  std::string read(20, ' ');
  const auto count = ::read(reader, read.data(), read.size());
  ::close(reader);
  CHECK(read.substr(0, static_cast<std::size_t>(std::max<ssize_t>(count, 0))) == "a plan");
  CHECK(fs::is_fifo(pipe));
}

TEST_CASE("an empty file is text, not a problem") {
  const Folder folder;
  Problems problems;
  std::ofstream(folder.path / "empty").close();
  CHECK(read_text_file(folder.path / "empty", problems) == "");
  CHECK(problems.empty());
}

}  // namespace
}  // namespace tackfree
