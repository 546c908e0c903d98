#include "tackfree/cli/check_command.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("a job without mistakes is told in one line with what it has") {
  const Folder folder;
  const std::string job = starter_in(folder);
  const Said right = said({"check", job});
  CHECK(right.code == exit_done);
  CHECK(right.out.find("job.json: no mistakes found (") != std::string::npos);
  std::ofstream(folder.in("mine/job.log.jsonl")) << "no line of a log\n";
  const Said wrong = said({"check", job});
  CHECK(wrong.code == exit_wrong_input);
  CHECK(wrong.out.empty());
  CHECK(wrong.err.find("job.log.jsonl:1: ") != std::string::npos);
}

}  // namespace tackfree::testing
