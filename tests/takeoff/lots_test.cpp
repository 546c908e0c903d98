#include "tackfree/takeoff/lots.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

/// Seven tops of 1.8 x 0.6 m = 1.08 m2 each, in a room with space for two and a half of them.
Job seven_tops() {
  Job job = testing::sample_job();
  job.parts[0].quantity = 7;
  job.rooms = {{"shed", square_metres(2.7), std::nullopt, 0}};
  job.batches[0].rules.room = 0;
  return job;
}

TEST_CASE("a piece covers its length by its width, and a measured area covers itself") {
  CHECK(covered_by(Board{metres(1.8), metres(0.6), metres(0.03)}).in(square_metres) ==
        doctest::Approx(1.08));
  CHECK(covered_by(Round{metres(0.7), millimetres(40)}).in(square_metres) ==
        doctest::Approx(0.028));
  CHECK(covered_by(PlainArea{square_metres(0.21)}).in(square_metres) == doctest::Approx(0.21));
}

TEST_CASE("a batch too large for its room goes through in lots that each fit, with no piece lost") {
  Job job = seven_tops();
  Problems problems;
  split_into_lots(job, problems);
  CHECK(problems.empty());
  REQUIRE(job.batches.size() == 4);
  int pieces = 0;
  for (std::size_t b = 0; b < 4; ++b) {
    CHECK(space_taken(job, b) <= 2.7);
    CHECK(job.batches[b].rules.lot_of == "top");
    CHECK(job.batches[b].rules.lots == 4);
  }
  for (const Part& part : job.parts) pieces += part.quantity;
  CHECK(pieces == 7);
  CHECK(job.batches[3].name == "top, lot 4");
  CHECK(space_taken(job, 3) == doctest::Approx(1.08));
}

TEST_CASE("a batch that fits is left as it is, and so is one in a room without limits") {
  Job job = seven_tops();
  job.rooms[0].space = square_metres(7.56);
  Problems problems;
  split_into_lots(job, problems);
  CHECK(job.batches.size() == 1);
  job.rooms[0].space.reset();
  CHECK_FALSE(space_in_room(job, 0));
  CHECK(space_taken(job, 0) == 0);
}

TEST_CASE("places are counted in pieces, and the batch's own figure scales what it takes") {
  Job job = seven_tops();
  job.batches[0].rules.space = square_metres(1.4);  // standing: 0.2 m2 each
  CHECK(space_taken(job, 0) == doctest::Approx(1.4));
  Problems problems;
  job.rooms[0].space = square_metres(0.6);
  split_into_lots(job, problems);
  REQUIRE(job.batches.size() == 3);
  CHECK(space_taken(job, 0) == doctest::Approx(0.6));
  CHECK(space_taken(job, 2) == doctest::Approx(0.2));
  Job places = seven_tops();
  places.rooms = {{"rack", std::nullopt, 3, 0}};
  split_into_lots(places, problems);
  CHECK(places.batches.size() == 3);
  CHECK(space_taken(places, 0) == 3);
}

TEST_CASE("a batch goes through in a hundred lots, and in more it is refused with the way out") {
  Job job = seven_tops();
  job.rooms = {{"rack", std::nullopt, 1, 4}};
  job.parts[0].quantity = 100;
  Job more = job;
  more.parts[0].quantity = 101;
  Problems problems;
  split_into_lots(job, problems);
  CHECK(problems.empty());
  CHECK(job.batches.size() == 100);
  split_into_lots(more, problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 4);
  CHECK(problems[0].wanted == "wanted room for batch \"top\" in at most 100 lots");
  CHECK(problems[0].hint == "give it a larger room, or split it into jobs of their own");
}

TEST_CASE("what comes after a batch in lots still comes after the batch, by its own name") {
  Job job = seven_tops();
  testing::add_legs(job);
  job.batches[1].after = "top";
  Problems problems;
  split_into_lots(job, problems);
  CHECK(job.batches.back().after == "top");
}

TEST_CASE("a piece hardly larger than its room is told as larger") {
  Job job = seven_tops();
  job.parts[0].shape = Board{metres(1.8007), metres(0.6), metres(0.03)};
  job.rooms[0].space = square_metres(1.08);
  Problems problems;
  split_into_lots(job, problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].found == "1.08");
  CHECK(problems[0].wanted.find("takes 1.09 m2") != std::string::npos);
}

TEST_CASE("a piece larger than its room is a named mistake") {
  Job job = seven_tops();
  job.rooms[0].space = square_metres(1);
  Problems problems;
  split_into_lots(job, problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].key == "rooms.drying_space_m2");
  CHECK(problems[0].wanted.find("takes 1.08 m2") != std::string::npos);
  CHECK(job.batches.size() == 1);
}

}  // namespace
}  // namespace tackfree
