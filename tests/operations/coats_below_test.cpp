#include "tackfree/operations/coats_below.hpp"

#include "tackfree/operations/repairs.hpp"

#include <algorithm>

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

std::string key_of_coat(int number) {
  return "top/finish/coat-" + std::to_string(number) + "/both/coat";
}

/// Four coats of a class in one go, of which the log tells a fault or none.
struct Listed {
  Job job;
  OperationList list;

  explicit Listed(const std::string& class_key, std::vector<LogEntry> log = {},
                  Sides sides = Sides::on_points)
      : job(sample_job(class_key)) {
    job.batches[0].sides = sides;
    job.systems[0].steps[0].coats = 4;
    job.history.entries = std::move(log);
    const SurfaceTakeoff takeoff = take_off(job);
    list = with_repairs(operation_list(job, takeoff, job_volumes(job, takeoff, {1.0})), job, {});
  }

  Operation& called(const std::string& key) {
    const auto found = std::ranges::find(list.operations, key, &Operation::key);
    REQUIRE(found != list.operations.end());
    return *found;
  }

  void do_until(const std::string& key) {
    for (Operation& op : list.operations) {
      op.done = Done{};
      if (op.key == key) return;
    }
  }

  /// Waits of the coat for another one, once those for what is below are added.
  std::vector<Wait> waits(const std::string& coat, const std::string& below) {
    wait_for_coats_below(list, job);
    std::vector<Wait> found;
    for (const Wait& wait : called(coat).waits)
      if (list.operations[wait.operation].key == below) found.push_back(wait);
    return found;
  }
};

TEST_CASE("while all work is still to come, or went as listed, no coat waits for more") {
  for (const char* class_key : {"oil_polyurethane", "nitrocellulose_lacquer", "shellac"}) {
    Listed listed(class_key, {}, Sides::turn_over);
    const auto count = [&] {
      std::size_t waits = 0;
      for (const Operation& op : listed.list.operations) waits += op.waits.size();
      return waits;
    };
    const std::size_t before = count();
    wait_for_coats_below(listed.list, listed.job);
    CHECK(count() == before);
    listed.do_until(show_1);
    wait_for_coats_below(listed.list, listed.job);
    CHECK(count() == before);
  }
}

TEST_CASE("once the sanding is done, the coat over it waits for the film below itself") {
  Listed listed("oil_polyurethane");
  const std::size_t second =
      static_cast<std::size_t>(&listed.called(key_of_coat(2)) - listed.list.operations.data());
  listed.do_until(listed.list.operations[second - 2].key);
  REQUIRE(listed.list.operations[second - 2].kind == OperationKind::sand_between);
  const std::vector<Wait> waits = listed.waits(key_of_coat(2), key_of_coat(1));
  REQUIRE(waits.size() == 1);
  CHECK(waits[0].stage == Stage::recoat);
  CHECK(waits[0].films == 1);
  CHECK(listed.waits(key_of_coat(3), key_of_coat(2)).empty());
}

TEST_CASE("parts whose sanding was left out are not laid on a side that is still wet") {
  Listed listed("oil_polyurethane", {}, Sides::turn_over);
  listed.do_until(show_1);
  CHECK(listed.waits(back_2, show_1).empty());
  for (Operation& op : listed.list.operations)
    if (op.kind == OperationKind::sand_between && op.coat == 2) op.done = Done{.skipped = true};
  const std::string turning = "top/finish/coat-2/back/turn-back";
  REQUIRE(listed.waits(turning, show_1).size() == 1);
  CHECK(listed.waits(turning, show_1)[0].stage == Stage::handle);
  listed.called(turning).done = Done{};
  REQUIRE(listed.waits(back_2, show_1).size() == 1);
  CHECK(listed.waits(back_2, show_1)[0].stage == Stage::handle);
}

TEST_CASE("before a back is coated again the piece is turned, when its show side bears handling") {
  const std::string turning = "top/finish/coat-2/back/turn-back";
  Listed sanded("oil_polyurethane", {}, Sides::turn_over);
  CHECK(sanded.called(turning).work == sanded.job.data.labour.turn_over.value);
  CHECK(sanded.waits(turning, "top/finish/coat-2/both/sand-p240").size() == 1);
  CHECK(sanded.waits("top/finish/coat-2/back/dust-off", turning).size() == 1);
  Listed unsanded("nitrocellulose_lacquer", {}, Sides::turn_over);
  CHECK(unsanded.waits("top/finish/coat-3/back/coat", "top/finish/coat-3/back/turn-back").size() ==
        1);
  const auto shown =
      unsanded.waits("top/finish/coat-3/back/turn-back", "top/finish/coat-2/show/coat");
  REQUIRE(shown.size() == 1);
  CHECK(shown[0].stage == Stage::handle);
}

TEST_CASE("a coat that was left out lies below nothing") {
  Listed listed("oil_polyurethane");
  listed.do_until(key_of_coat(3));
  listed.called(key_of_coat(3)).done->skipped = true;
  CHECK(listed.waits(key_of_coat(4), key_of_coat(3)).empty());
  REQUIRE(listed.waits(key_of_coat(4), key_of_coat(2)).size() == 1);
  CHECK(listed.waits(key_of_coat(4), key_of_coat(2))[0].stage == Stage::recoat);
}

TEST_CASE("a coat that goes on again lies on the one below where the first was washed off") {
  Listed washed("shellac", {fault(1, key_of_coat(2), "2027-04-07T18:00Z", Fault::fisheyes)});
  washed.do_until(key_of_coat(2));
  const std::string again = key_of_coat(2) + "-again";
  CHECK(washed.waits(again, key_of_coat(2)).empty());
  CHECK(washed.waits(again, key_of_coat(1)).front().stage == Stage::recoat);
  Listed touched_up("shellac",
                    {fault(1, key_of_coat(4), "2027-04-07T18:00Z", Fault::sand_through)});
  touched_up.do_until(key_of_coat(4));
  const std::string last = key_of_coat(4) + "-again";
  CHECK(touched_up.waits(last, key_of_coat(4)).front().stage == Stage::recoat);
  // The fourth of a day, where three may be: not before the day after the second.
  CHECK(std::ranges::any_of(touched_up.waits(last, key_of_coat(2)), &Wait::next_day));
}

}  // namespace
}  // namespace tackfree
