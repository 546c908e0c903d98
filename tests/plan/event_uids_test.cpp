#include "tackfree/plan/event_uids.hpp"

#include <string>

#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("a UID follows from the key and the job alone, and fits a line of a calendar") {
  EventUids uids("hall-bench");
  CHECK(uids.uid_of("Seat, top/varnish/coat-1/back/coat/session") ==
        "seat-top.varnish.coat-1.back.coat.session.hall-bench@tackfree.invalid");
  const std::string longer = uids.uid_of(std::string(300, 'n') + "/a");
  CHECK(longer.size() < 130);
  CHECK(longer != uids.uid_of(std::string(300, 'n') + "/b"));
}

TEST_CASE("keys that fall together are numbered") {
  EventUids uids("job");
  CHECK(uids.uid_of("seat!") == "seat.job@tackfree.invalid");
  CHECK(uids.uid_of("seat?") == "seat-again-2.job@tackfree.invalid");
}

}  // namespace tackfree
