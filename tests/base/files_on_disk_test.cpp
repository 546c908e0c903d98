#include "tackfree/base/files_on_disk.hpp"

#include "tackfree/base/text_file.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

namespace tackfree {

TEST_CASE("files on disk are read as they were written, and missing ones told") {
  const std::filesystem::path path =
      std::filesystem::temp_directory_path() / ("tackfree_disk_" + std::to_string(::getpid()));
  Problems problems;
  REQUIRE(write_text_file(path, "one\ntw", problems));
  const FilesOnDisk files;
  CHECK(files.text(path, problems) == "one\ntw");
  CHECK(files.appended(path, problems).value().lines == "one\n");
  CHECK(files.appended(path, problems).value().torn == "tw");
  std::filesystem::remove(path);
  CHECK(files.appended(path, problems).value().lines.empty());
  CHECK(problems.empty());
  CHECK_FALSE(files.text(path, problems));
  CHECK(problems.size() == 1);
}

}  // namespace tackfree
