#include "tackfree/cli/run.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("no control character of a job file reaches the terminal, in a plan or in a mistake") {
  const Folder folder;
  const std::string job = starter_in(folder);
  const std::string text = text_of(job);
  const auto check_plain = [&](const std::string& changed, int code) {
    std::ofstream(job, std::ios::binary) << changed;
    const Said s = said({"plan", job, "--now", "2027-04-05T17:45Z"});
    CHECK(s.code == code);
    for (const std::string& said_to : {s.out, s.err}) {
      for (const char c : said_to) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
      CHECK(said_to.find("\xC2\x9B") == std::string::npos);
      CHECK(said_to.find("\xE2\x80\xAE") == std::string::npos);
    }
  };
  const std::string steering = "\\u001b[2J\\u009b31m\\u202e\\u0007";
  const std::size_t name = text.find("\"name\": \"") + 9;
  check_plain(std::string(text).insert(name, steering), exit_done);
  check_plain(std::string(text).insert(text.find('{') + 1, "\"" + steering + "\": 1,"),
              exit_wrong_input);
}

TEST_CASE("colour is for terminals, and what is printed is as wide as asked") {
  const std::string job = TACKFREE_ROOT "/data/demo/hall_bench/hall_bench.json";
  std::ostringstream plain, coloured, err;
  CHECK(run({"area", job}, plain, err) == exit_done);
  CHECK(run({"area", job}, coloured, err, {.columns = 120, .coloured = true}) == exit_done);
  CHECK(plain.str().find('\x1b') == std::string::npos);
  CHECK(coloured.str().find("\x1b[1") != std::string::npos);
  CHECK(plain.str().find("show side") == std::string::npos);
  CHECK(coloured.str().find("show side") != std::string::npos);
  CHECK(said({"area", job, "--width", "120"}).out.find("show side") != std::string::npos);
}

}  // namespace tackfree::testing
