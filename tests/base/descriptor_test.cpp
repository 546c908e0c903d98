#include "tackfree/base/descriptor.hpp"

#include <array>
#include <cerrno>
#include <string>
#include <thread>

#include <doctest/doctest.h>
#include <fcntl.h>
#include <unistd.h>

using namespace tackfree;

TEST_CASE("what is longer than a pipe holds is written and read whole") {
  std::array<int, 2> ends{};
  REQUIRE(::pipe(ends.data()) == 0);
  Descriptor from(ends[0]), into(ends[1]);
  const std::string text(1'000'000, 'x');
  bool written = false;
  std::thread writer([&] { written = write_all(into, text) && into.close(); });
  const auto read = read_all(from, text.size());
  writer.join();
  CHECK(written);
  REQUIRE(read);
  CHECK(*read == text);
}

TEST_CASE("more than is allowed is refused as too long") {
  std::array<int, 2> ends{};
  REQUIRE(::pipe(ends.data()) == 0);
  Descriptor from(ends[0]), into(ends[1]);
  REQUIRE(write_all(into, "twelve bytes"));
  REQUIRE(into.close());
  CHECK_FALSE(read_all(from, 11));
  CHECK(errno == EFBIG);
}

TEST_CASE("a descriptor closes its file when it goes, and only once") {
  int number = -1;
  {
    const Descriptor file(::open("/dev/null", O_WRONLY | O_CLOEXEC));
    REQUIRE(file.is_open());
    number = file.number();
  }
  CHECK(::fcntl(number, F_GETFD) == -1);
  Descriptor none(-1);
  CHECK_FALSE(none.is_open());
  CHECK(none.close());
  CHECK_FALSE(read_all(none, 1));
  CHECK_FALSE(write_all(none, "x"));
}
