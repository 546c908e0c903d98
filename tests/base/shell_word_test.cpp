#include "tackfree/base/shell_word.hpp"

#include <array>
#include <cstdio>
#include <string>

#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("plain names stay as they are, others are quoted") {
  CHECK(shell_word("my_shelf/job-2.json") == "my_shelf/job-2.json");
  CHECK(shell_word("2027-04-05T20:10") == "2027-04-05T20:10");
  CHECK(shell_word("seat and shelf") == "'seat and shelf'");
  CHECK(shell_word("") == "''");
}

TEST_CASE("the shell gets back what was meant, whatever is in it") {
  for (const std::string text : {"seat", "seat and shelf", "it's", "$(echo x)`y`\"z\"\\", "a;b&c|d",
                                 "'", "", "~", "*", "#1", "-n\nx", "Küche"}) {
    CAPTURE(text);
    FILE* pipe = ::popen(("printf '%s|' " + shell_word(text)).c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::array<char, 256> read{};
    const std::size_t count = std::fread(read.data(), 1, read.size(), pipe);
    CHECK(::pclose(pipe) == 0);
    CHECK(std::string(read.data(), count) == text + "|");
  }
}

}  // namespace tackfree
