#include "tackfree/base/locked_file.hpp"

#include <cerrno>
#include <filesystem>

#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

using namespace tackfree;

TEST_CASE("a file is locked until it is closed, and what is no file cannot be") {
  const std::filesystem::path path =
      std::filesystem::temp_directory_path() / ("tackfree_locked_" + std::to_string(::getpid()));
  const LockPatience short_one{{}, std::chrono::milliseconds(20)};
  {
    const LockedFile first(path, O_RDWR | O_CREAT, LOCK_EX, short_one);
    REQUIRE(first.is_open());
    const LockedFile second(path, O_RDWR, LOCK_EX, short_one);
    CHECK_FALSE(second.is_open());
    CHECK(errno == EWOULDBLOCK);
    CHECK(fault_of_file(path, "written").wanted.find("keeps it locked") != std::string::npos);
  }
  const LockedFile third(path, O_RDWR, LOCK_EX, short_one);
  CHECK(third.is_open());
  std::filesystem::remove(path);
  const LockedFile device("/dev/null", O_RDWR, LOCK_EX, short_one);
  CHECK_FALSE(device.is_open());
  CHECK(errno == ENODEV);
  CHECK(fault_of_file("/dev/null", "read").wanted ==
        "is a folder, a device or a pipe; name a file");
}
