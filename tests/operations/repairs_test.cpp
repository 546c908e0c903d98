#include "tackfree/operations/repairs.hpp"

#include <algorithm>

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

OperationList listed(const Job& job) {
  const SurfaceTakeoff takeoff = take_off(job);
  return with_repairs(operation_list(job, takeoff, job_volumes(job, takeoff, {1.0})), job);
}

OperationList with_fault(Fault what, const std::string& coat = back_1) {
  return listed(logged_job({fault(1, coat, "2027-04-07T18:00Z", what)}));
}

std::size_t place(const OperationList& list, const std::string& key) {
  for (std::size_t i = 0; i < list.operations.size(); ++i)
    if (list.operations[i].key == key) return i;
  FAIL("no operation " << key);
  return 0;
}

bool waits_for(const OperationList& list, const std::string& key, const std::string& before) {
  const std::size_t earlier = place(list, before);
  return std::ranges::any_of(list.operations[place(list, key)].waits,
                             [&](const Wait& wait) { return wait.operation == earlier; });
}

TEST_CASE("without a fault the list is as it was") {
  const Job job = sample_job();
  const SurfaceTakeoff takeoff = take_off(job);
  CHECK(listed(job).operations.size() ==
        operation_list(job, takeoff, job_volumes(job, takeoff, {1.0})).operations.size());
}

TEST_CASE("a run on a hidden back keeps neither turning nor the show side waiting") {
  const OperationList list = with_fault(Fault::runs);
  const std::string repair = "top/finish/coat-1/back/repair-runs";
  CHECK_FALSE(waits_for(list, "top/finish/coat-1/both/turn-over", repair));
  CHECK(place(list, repair) > place(list, show_1));
  const std::size_t at = place(list, repair);
  CHECK(std::ranges::any_of(list.operations[at + 1].waits,
                            [&](const Wait& wait) { return wait.operation == at; }));
}

TEST_CASE("a run is levelled when its double film is dry to sand") {
  const OperationList list = with_fault(Fault::runs);
  const Operation& repair = list.operations[place(list, "top/finish/coat-1/back/repair-runs")];
  CHECK(repair.grit == Grit{320});
  REQUIRE(repair.waits.size() == 1);
  CHECK(repair.waits[0].operation == place(list, back_1));
  CHECK(repair.waits[0].films == 2);
  CHECK(repair.waits[0].stage == Stage::sand);
  REQUIRE(repair.how.size() == 1);
  CHECK(repair.how[0].find("run") != std::string::npos);
}

TEST_CASE("wrinkles cost the coat again, and what waited for it waits for the new one") {
  const OperationList list = with_fault(Fault::wrinkling);
  const Operation& again = list.operations[place(list, back_1 + "-again")];
  CHECK(again.again);
  CHECK(again.mixed == list.operations[place(list, back_1)].mixed);
  CHECK(waits_for(list, back_1 + "-again", "top/finish/coat-1/back/repair-wrinkling"));
  CHECK(waits_for(list, "top/finish/coat-1/both/turn-over", back_1 + "-again"));
  CHECK_FALSE(waits_for(list, "top/finish/coat-1/both/turn-over", back_1));
}

TEST_CASE("a run in the last coat costs the coat again, and the outcome is that of the new one") {
  const std::string last = "top/finish/coat-3/show/coat";
  const OperationList list = with_fault(Fault::runs, last);
  const std::size_t again = place(list, last + "-again");
  for (const Outcome& outcome : list.outcomes)
    CHECK(std::ranges::find(outcome.coats, again) != outcome.coats.end());
}

TEST_CASE("every operation stands after those it waits for, whatever went wrong where") {
  const Job job = logged_job({fault(1, back_1, "2027-04-07T18:00Z", Fault::fisheyes),
                              fault(2, show_1, "2027-04-07T18:00Z", Fault::blush),
                              fault(3, back_1, "2027-04-08T18:00Z", Fault::runs),
                              fault(4, back_2, "2027-04-08T18:00Z", Fault::sand_through),
                              fault(5, back_2, "2027-04-08T18:00Z", Fault::tacky)});
  const OperationList list = listed(job);
  const std::size_t without = listed(sample_job()).operations.size();
  CHECK(list.operations.size() == without + 5);
  for (std::size_t i = 0; i < list.operations.size(); ++i) {
    CHECK_FALSE(list.operations[i].key.empty());
    for (const Wait& wait : list.operations[i].waits) CHECK(wait.operation < i);
  }
}

TEST_CASE("a fault that is seen after the parts were turned brings its repair after that") {
  const std::string turned = "top/finish/coat-1/both/turn-over";
  const OperationList list = listed(logged_job(
      {coat(1, back_1, "2027-04-06T19:00Z"), entry(2, LogKind::done, turned, "2027-04-07T17:00Z"),
       fault(3, back_1, "2027-04-07T18:00Z", Fault::wrinkling)}));
  CHECK(place(list, "top/finish/coat-1/back/repair-wrinkling") > place(list, turned));
  CHECK(waits_for(list, turned, back_1));
  CHECK_FALSE(waits_for(list, turned, back_1 + "-again"));
  CHECK(waits_for(list, "top/finish/coat-1/show/dust-off", back_1 + "-again"));
}

TEST_CASE("what was sanded of a coat that turns out to be lost is sanded once more") {
  Job job =
      logged_job({coat(1, "top/finish/coat-1/both/coat", "2027-04-06T19:00Z"),
                  entry(2, LogKind::done, "top/finish/coat-2/both/sand-p240", "2027-04-08T17:00Z"),
                  fault(3, "top/finish/coat-1/both/coat", "2027-04-08T18:00Z", Fault::fisheyes)});
  job.batches[0].sides = Sides::on_points;
  const OperationList list = listed(job);
  const std::string once_more = "top/finish/coat-2/both/sand-p240-2";
  CHECK(waits_for(list, once_more, "top/finish/coat-1/both/coat-again"));
  CHECK(waits_for(list, "top/finish/coat-2/both/coat", once_more));
  CHECK_FALSE(waits_for(list, "top/finish/coat-2/both/coat", "top/finish/coat-2/both/sand-p240"));
}

TEST_CASE("spots that are seen on a sanded coat are put right before the next coat") {
  Job job = logged_job(
      {coat(1, "top/finish/coat-1/both/coat", "2027-04-06T19:00Z"),
       entry(2, LogKind::done, "top/finish/coat-2/both/sand-p240", "2027-04-08T17:00Z"),
       fault(3, "top/finish/coat-1/both/coat", "2027-04-08T18:00Z", Fault::sand_through)});
  job.batches[0].sides = Sides::on_points;
  const OperationList list = listed(job);
  CHECK(
      waits_for(list, "top/finish/coat-2/both/coat", "top/finish/coat-1/both/repair-sand-through"));
}

TEST_CASE("nothing is repaired of a coat that had been coated over when its fault was seen") {
  const std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:00Z"),
                                  coat(2, show_1, "2027-04-07T19:00Z"),
                                  coat(3, back_2, "2027-04-08T19:00Z"),
                                  fault(4, back_1, "2027-04-08T20:00Z", Fault::wrinkling)};
  CHECK(listed(logged_job(log)).operations.size() == listed(sample_job()).operations.size());
}

TEST_CASE("faults without end are listed up to more than any plan holds") {
  std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:00Z")};
  for (int id = 2; id < 1'500; ++id)
    log.push_back(fault(id, back_1, "2027-04-06T20:00Z", Fault::wrinkling));
  const std::size_t listed_up_to = listed(logged_job(log)).operations.size();
  CHECK(listed_up_to >= most_listed);
  CHECK(listed_up_to < most_listed + 10);
}

TEST_CASE("every class with advice on repairs has some for the faults it names") {
  const Job job = sample_job();
  for (const Fault what :
       {Fault::runs, Fault::wrinkling, Fault::fisheyes, Fault::tacky, Fault::sand_through})
    CHECK_FALSE(repair_advice(job, class_of(job.data, "oil_polyurethane"), what).empty());
  CHECK(repair_advice(job, class_of(job.data, "shellac"), Fault::blush).find("Blush") == 0);
}

}  // namespace
}  // namespace tackfree
