#include "tackfree/base/file_identity.hpp"

#include <filesystem>
#include <fstream>

#include <doctest/doctest.h>
#include <fcntl.h>
#include <unistd.h>

namespace tackfree {
namespace {

namespace fs = std::filesystem;

/// A folder of its own with one file in it, gone at the end.
struct IdentityFolder {
  fs::path path = fs::temp_directory_path() / ("tackfree_identity_" + std::to_string(::getpid()));
  fs::path file = path / "a.json";
  IdentityFolder() {
    fs::create_directories(path);
    std::ofstream(file) << "{}";
  }
  ~IdentityFolder() { fs::remove_all(path); }
};

TEST_CASE("a file is the same under every name that leads to it, and under no other") {
  const IdentityFolder folder;
  const auto is = identity_of(folder.file);
  REQUIRE(is);
  fs::create_hard_link(folder.file, folder.path / "hard.json");
  fs::create_symlink("a.json", folder.path / "soft.json");
  fs::create_directory_symlink(folder.path, folder.path / "round");
  for (const char* name :
       {"hard.json", "soft.json", "./a.json", "round/a.json", "round/../a.json"}) {
    CAPTURE(name);
    // The folder "round" leads to its own parent, whose parent is another.
    if (std::string(name) == "round/../a.json")
      CHECK(identity_of(folder.path / name) != is);
    else
      CHECK(identity_of(folder.path / name) == is);
  }
  std::ofstream(folder.path / "b.json") << "{}";
  CHECK(identity_of(folder.path / "b.json") != is);
  const int open = ::open(folder.file.c_str(), O_RDONLY | O_CLOEXEC);
  CHECK(identity_of(open) == is);
  ::close(open);
}

TEST_CASE("a file that is not there yet is known by its folder and its name") {
  const IdentityFolder folder;
  fs::create_directory_symlink(folder.path, folder.path / "round");
  fs::create_symlink("new.json", folder.path / "ahead.json");
  const auto will_be = identity_of(folder.path / "new.json");
  REQUIRE(will_be);
  CHECK(identity_of(folder.path / "round" / "new.json") == will_be);
  CHECK(identity_of(folder.path / "ahead.json") == will_be);
  CHECK(identity_of(folder.path / "." / "new.json") == will_be);
  CHECK(identity_of(folder.path / "other.json") != will_be);
  CHECK(identity_of(folder.path / "no" / "new.json") != will_be);
  CHECK(identity_of(folder.path / "no" / "new.json") ==
        identity_of(folder.path / "round" / "no" / "." / "new.json"));
  CHECK(link_target(folder.path / "ahead.json") == folder.path / "new.json");
  CHECK(link_target(folder.file) == folder.file);
}

TEST_CASE("devices of characters are no files, and a ring of links ends") {
  CHECK_FALSE(identity_of("/dev/null"));
  const IdentityFolder folder;
  fs::create_symlink("ring.json", folder.path / "ring.json");
  CHECK(identity_of(folder.path / "ring.json"));
}

}  // namespace
}  // namespace tackfree
