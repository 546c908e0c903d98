#include "tackfree/plan/shop_notes.hpp"

#include "tackfree/plan/make_plan.hpp"

#include "sample_job.hpp"
#include "told_notes.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

std::vector<Note> shop_notes_of(const Job& job) {
  Problems problems;
  const auto plan = make_plan(job, testing::instant("2027-04-05T17:00Z"), problems);
  REQUIRE(plan);
  return shop_notes(*plan);
}

TEST_CASE("a batch that is split says what it takes, what the room has, and into how many lots") {
  Job job = testing::sample_job();
  CHECK(shop_notes_of(job).empty());
  job.parts[0].quantity = 4;  // 1.08 m2 each
  job.rooms = {{"shed", square_metres(2.5), std::nullopt, 0}};
  job.batches[0].rules.room = 0;
  const auto notes = testing::notes_of<LotsNote>(shop_notes_of(job));
  REQUIRE(notes.size() == 1);
  CHECK(notes[0].batch == 0);
  CHECK(notes[0].takes == doctest::Approx(4.32).epsilon(0.001));
  CHECK(notes[0].has == doctest::Approx(2.5));
  CHECK_FALSE(notes[0].in_places);
}

TEST_CASE("a pin on a coat that is not there is told") {
  Job job = testing::sample_job();
  job.batches[0].rules.pins = {
      {"finish", 4, std::nullopt, parse_date("2027-04-17").value(), {0, 24 * 60}, 0}};
  REQUIRE(shop_notes_of(job).size() == 1);
  CHECK(testing::notes_of<LostPinNote>(shop_notes_of(job)).size() == 1);
  job.batches[0].rules.pins[0].coat = 3;
  CHECK(shop_notes_of(job).empty());
}

TEST_CASE("with several people it is said that nothing is proved") {
  Job job = testing::sample_job();
  job.people = {{"A", job.calendar, 0}, {"B", job.calendar, 0}};
  CHECK(testing::times_told(shop_notes_of(job), PlainNote::several_people_tried) == 1);
}

}  // namespace
}  // namespace tackfree
