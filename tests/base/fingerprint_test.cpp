#include "tackfree/base/fingerprint.hpp"

#include <doctest/doctest.h>

namespace tackfree {

// Source: the known vectors of FNV-1a in 64 bits of its authors, as in RFC 9923.
TEST_CASE("fingerprints are those of the published test vectors") {
  CHECK(fingerprint("") == "cbf29ce484222325");
  CHECK(fingerprint("a") == "af63dc4c8601ec8c");
  CHECK(fingerprint("foobar") == "85944171f73967e8");
}

}  // namespace tackfree
