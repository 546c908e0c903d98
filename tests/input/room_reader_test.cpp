#include "tackfree/input/room_reader.hpp"

#include "tackfree/syntax/json_document.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

struct ReadRoom {
  Room room;
  AirChanges changes;
  Problems problems;

  explicit ReadRoom(const std::string& airing) {
    const std::string text = R"({"room": {"volume_m3": 90, "airing": )" + airing + "}}";
    const auto tree = parse_json(text, "job.json", problems);
    REQUIRE(tree);
    JsonCursor job(*tree, "", "job.json", problems);
    changes.ajar = sourced(per_hour(1.5), Origin::assumed);
    room = read_room(job, changes);
  }
};

}  // namespace

TEST_CASE("a habit is read with its openings and hours") {
  const ReadRoom read(R"({"while_coating": "open", "after": {"state": "ajar", "hours": 4}})");
  CHECK(read.problems.empty());
  REQUIRE(read.room.airing);
  CHECK(*read.room.airing == AiringHabit{Opening::open, Opening::ajar, hours(4)});
  CHECK_FALSE(read.room.fan);
}

TEST_CASE("own air changes are measured, what is not given stays the trade's") {
  const ReadRoom read(R"({"closed_per_h": 0.3, "mixing_factor": 5})");
  CHECK(read.problems.empty());
  CHECK_FALSE(read.room.airing);
  CHECK(read.changes.closed.value == per_hour(0.3));
  CHECK(read.changes.closed.origin == Origin::measured);
  CHECK(read.changes.ajar.origin == Origin::assumed);
  CHECK(read.changes.mixing_one_opening.value == 5);
  CHECK(read.changes.mixing_through_draft.value == 5);
}

TEST_CASE("a fan's flow is rated unless it is said to be measured") {
  const ReadRoom rated(R"({"fan_cfm": 100})");
  REQUIRE(rated.room.fan);
  CHECK(rated.room.fan->flow.in(cubic_metres_per_hour) == doctest::Approx(169.9011));
  CHECK_FALSE(rated.room.fan->measured);
  CHECK(ReadRoom(R"({"fan_m3_per_h": 100, "fan_flow_is": "measured"})").room.fan->measured);
}

TEST_CASE("a fan in the habit without its flow, two flows and unknown openings are mistakes") {
  for (const char* airing :
       {R"({"while_coating": "open_and_fan"})", R"({"fan_cfm": 100, "fan_m3_per_h": 100})",
        R"({"while_coating": "opne"})", R"({"fan_flow_is": "rated"})",
        R"({"after": {"state": "ajar"}})", R"({"after": {"state": "ajar", "hours": -1}})"})
    CHECK_MESSAGE(ReadRoom(airing).problems.size() == 1, airing);
}
