#include "tackfree/base/files.hpp"

#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("files in memory are found by any way of writing their paths, and missing ones told") {
  FilesInMemory files;
  files.put("shelf/./job.json", "first");
  files.put("shelf/job.json", "second");
  Problems problems;
  CHECK(files.text("shelf/../shelf/job.json", problems) == "second");
  CHECK(problems.empty());
  CHECK_FALSE(files.text("shelf/log", problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "shelf/log");
}

TEST_CASE("a file that lines are added to may not be there yet, and its last line may be torn") {
  FilesInMemory files;
  Problems problems;
  CHECK(files.appended("log", problems).value().lines.empty());
  files.put("log", "one\ntwo\nthr");
  const AppendedText there = files.appended("log", problems).value();
  CHECK(there.lines == "one\ntwo\n");
  CHECK(there.torn == "thr");
  CHECK(appended_text("one\n").torn.empty());
  CHECK(problems.empty());
}

}  // namespace tackfree
