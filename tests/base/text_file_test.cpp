#include "tackfree/base/text_file.hpp"

#include <filesystem>
#include <fstream>

#include <doctest/doctest.h>
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

TEST_CASE("an empty file is text, not a problem") {
  const Folder folder;
  Problems problems;
  std::ofstream(folder.path / "empty").close();
  CHECK(read_text_file(folder.path / "empty", problems) == "");
  CHECK(problems.empty());
}

}  // namespace
}  // namespace tackfree
