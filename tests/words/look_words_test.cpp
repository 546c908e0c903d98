#include "tackfree/words/look_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::vector<std::string> looks(const Plan& plan) {
  return things_to_look_at(plan, StepWords(plan));
}

}  // namespace

TEST_CASE("a step without a time comes first, with its reason and how many wait for it") {
  Plan plan = small_plan();
  plan.schedule.unplaced.push_back(
      {.operation = 4, .by = HeldBy::previous_step, .gate = {}, .waits_for = 3, .conflict = {}});
  CHECK(looks(plan).at(0) ==
        "No time for seat: coat 2 of 2, show side: too cold to coat whenever you can work. 1 more "
        "step behind it.");
}

TEST_CASE("a missed due date says by how much, a kept one nothing") {
  Plan plan = small_plan();
  plan.schedule.unplaced.clear();
  plan.notes.clear();
  plan.job.batches[1].rules.ready_by = at("2027-04-11T03:00:00Z");
  CHECK(looks(plan) ==
        std::vector<std::string>{
            "legs is due Sat Apr 10, 11:00 pm, and ready Sun Apr 11, 11:00 pm: late by 24 h."});
  plan.job.batches[1].rules.ready_by = at("2027-04-15T03:00:00Z");
  CHECK(looks(plan).empty());
}

TEST_CASE("hardware that misses the due date is what is late, whenever the finish is ready") {
  Plan plan = small_plan();
  plan.schedule.unplaced.clear();
  plan.notes.clear();
  plan.job.batches[1].rules.ready_by = at("2027-04-15T03:00:00Z");
  plan.list.operations.push_back(small_operation(OperationKind::fit_hardware, "h", 1, 2));
  plan.schedule.steps.push_back(
      {.operation = plan.list.operations.size() - 1,
       .pieces = {{at("2027-04-15T13:00:00Z"), at("2027-04-15T14:00:00Z")}}});
  CHECK(looks(plan) == std::vector<std::string>{
                           "legs is due Wed Apr 14, 11:00 pm, and the last work on it ends Thu Apr "
                           "15, 10:00 am: late by 11 h."});
}

TEST_CASE("a note on what may ruin the finish is told, a remark is not") {
  Plan plan = small_plan();
  plan.schedule.unplaced.clear();
  CHECK(looks(plan).size() == 1);
  plan.notes = {LateWorkNote{.after = 1320}};
  CHECK(looks(plan).empty());
}

TEST_CASE("a fault of the log and a log that was cut off are told") {
  Plan plan = small_plan();
  plan.schedule.unplaced.clear();
  plan.notes.clear();
  LogEntry entry;
  entry.fault = Fault::runs;
  entry.step = plan.list.operations[1].key;
  entry.at = at("2027-04-10T16:00:00Z");
  plan.job.history.entries = {entry};
  plan.job.history.torn = "{";
  REQUIRE(looks(plan).size() == 2);
  CHECK(looks(plan)[0] == "Seat: coat 1 of 2, back: runs or sags, seen Sat Apr 10, noon.");
  CHECK(holds(looks(plan)[1], "cut off"));
}
