#include "tackfree/schedule/done_work.hpp"

#include "tackfree/schedule/make_schedule.hpp"

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

constexpr const char* tuesday_7pm = "2027-04-06T19:00Z";

/// The first coat of the sample job, done by that hour, in its list.
struct DoneCoat {
  Scheduled made = scheduled(sample_job());
  std::vector<DryingClock> clocks = drying_clocks(made.job, made.air);
  Operation* coat = nullptr;
  std::size_t index = 0;

  DoneCoat() {
    while (!made.list.operations[index].coating) ++index;
    coat = &made.list.operations[index];
    coat->done = Done{.time = {instant("2027-04-06T18:50Z"), instant(tuesday_7pm)}};
  }
  std::optional<Instant> handle() const {
    return done_reaches(made.job, *coat, clocks[0], Stage::handle);
  }
};

TEST_CASE("a done coat dries by the clock from the hour it was on") {
  const DoneCoat done;
  CHECK(done.handle() == done.clocks[0].reached(Stage::handle, instant(tuesday_7pm)));
  CHECK(done_wait_over(done.made.job, done.made.list, done.clocks,
                       {.operation = done.index, .stage = Stage::handle}) == done.handle());
  CHECK(done_wait_over(done.made.job, done.made.list, done.clocks,
                       {.operation = done.index, .delay = minutes(30)}) ==
        instant(tuesday_7pm) + Minutes(30));
}

TEST_CASE("a failed trial holds the stages from the one it was for on, not those before it") {
  DoneCoat done;
  const Instant dust_free =
      *done_reaches(done.made.job, *done.coat, done.clocks[0], Stage::dust_free);
  done.coat->done->not_dry_before = *done.handle() + 5 * one_hour;
  CHECK(done.handle() == done.coat->done->not_dry_before);
  CHECK(done_reaches(done.made.job, *done.coat, done.clocks[0], Stage::dust_free) == dust_free);
}

TEST_CASE("a thumb test that was passed never counts before the label's own hours") {
  DoneCoat done;
  const Instant by_label =
      instant(tuesday_7pm) +
      whole_minutes_up(done.made.job.coatings[0].label_after[index_of(Stage::handle)]->value);
  done.coat->done->dry_since = instant(tuesday_7pm) + Minutes(10);
  CHECK(done.handle() ==
        std::min(by_label, *done.clocks[0].reached(Stage::handle, instant(tuesday_7pm))));
  done.made.job.faster_than_label = true;
  CHECK(done.handle() == instant(tuesday_7pm) + Minutes(10));
}

TEST_CASE("a batch holds its space once, until the last of its coats can be handled") {
  DoneCoat done;
  done.made.job.rooms = {{"shed", square_metres(2), std::nullopt, 0}};
  CHECK(space_held(done.made.job, done.made.list, done.clocks).empty());  // it lies elsewhere
  done.made.job.batches[0].rules.room = 0;
  auto held = space_held(done.made.job, done.made.list, done.clocks);
  REQUIRE(held.size() == 1);
  CHECK(held[0].space == doctest::Approx(1.8 * 0.6));
  CHECK(held[0].until == done.handle());
  std::size_t later = done.index + 1;
  while (!done.made.list.operations[later].coating) ++later;
  Operation& show = done.made.list.operations[later];
  show.done = Done{.time = {instant(tuesday_7pm), instant("2027-04-06T20:00Z")}};
  held = space_held(done.made.job, done.made.list, done.clocks);
  REQUIRE(held.size() == 1);
  CHECK(*held[0].until > *done.handle());
  show.done->skipped = true;
  CHECK(space_held(done.made.job, done.made.list, done.clocks)[0].until == done.handle());
}

TEST_CASE("what was left out is not waited for") {
  DoneCoat done;
  done.coat->done->skipped = true;
  CHECK(done_wait_over(done.made.job, done.made.list, done.clocks,
                       {.operation = done.index, .stage = Stage::sand}) == instant(tuesday_7pm));
}

TEST_CASE("a wait for the next day ends at local midnight") {
  const DoneCoat done;
  CHECK(wait_over(done.made.job, done.made.list, done.clocks,
                  {.operation = done.index, .next_day = true},
                  instant(tuesday_7pm)) == instant("2027-04-07T00:00Z"));
}

}  // namespace
}  // namespace tackfree
