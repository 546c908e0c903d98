#include "tackfree/plan/early_coats.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "plan/planned_log.hpp"
#include "told_notes.hpp"
#include <doctest/doctest.h>
#include <fmt/format.h>

namespace tackfree {
namespace {

using namespace testing;

const std::string both_1 = "top/finish/coat-1/both/coat";
const std::string both_2 = "top/finish/coat-2/both/coat";

/// In one go, with a first coat on Tuesday evening and what else the log says.
Job early_job(const std::string& class_key, std::vector<LogEntry> more) {
  Job job = sample_job(class_key);
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].coats = 2;
  job.history.file = "sample.log.jsonl";
  job.history.entries = {coat(1, both_1, "2027-04-06T19:00Z")};
  for (LogEntry& line : more) job.history.entries.push_back(line);
  return job;
}

LogEntry insisted_coat(const std::string& step, Instant at) {
  LogEntry line = coat(2, step, "2027-04-06T19:00Z");
  line.written_at = line.at = at;
  line.began_at = at - Minutes(30);
  line.insisted = true;
  return line;
}

std::optional<Instant> ready_of(const Job& job, Instant now) {
  Problems problems;
  const auto plan = make_plan(job, now, problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  REQUIRE(plan);
  return plan->schedule.ready_at;
}

TEST_CASE("what is tried for an early coat takes half of the effort at most") {
  const Job job =
      early_job("oil_polyurethane", {insisted_coat(both_2, instant("2027-04-06T19:45Z"))});
  Problems problems;
  solver::Effort effort{.left = 2};
  REQUIRE(make_standing(job, instant("2027-04-06T20:00Z"), problems, &effort));
  CHECK(effort.left < 2);
  solver::Effort much{.left = 10'000'000};
  REQUIRE(make_standing(job, instant("2027-04-06T20:00Z"), problems, &much));
  CHECK(much.left >= 5'000'000);
  CHECK(much.left < 10'000'000);
}

TEST_CASE("nobody is ready sooner for putting a coat on before the one below is dry") {
  for (const char* each : {"oil_polyurethane", "waterborne_polyurethane", "shellac",
                           "alkyd_varnish", "two_component_polyurethane"}) {
    const FinishingData& data = sample_job().data;
    if (std::ranges::find(data.classes, std::string(each), &Coating::class_key) ==
        data.classes.end())
      continue;
    for (const bool with_legs : {false, true})
      for (const int minutes_later : {45, 120}) {
        CAPTURE(each);
        CAPTURE(with_legs);
        CAPTURE(minutes_later);
        const Instant end = instant("2027-04-06T19:00Z") + Minutes(minutes_later);
        Job waits = early_job(each, {}), hurries = early_job(each, {insisted_coat(both_2, end)});
        if (with_legs) {
          add_legs(waits);
          add_legs(hurries);
        }
        const auto waiting = ready_of(waits, end - Minutes(30));
        const auto hurrying = ready_of(hurries, end);
        REQUIRE(waiting);
        CHECK((!hurrying || *hurrying >= *waiting));
      }
  }
}

TEST_CASE("an early coat keeps its warning, and sanding that nobody did is not taken as done") {
  const Plan plan = planned_again(
      early_job("oil_polyurethane", {insisted_coat(both_2, instant("2027-04-06T20:30Z"))}),
      "2027-04-20T18:00Z");
  CHECK_FALSE(notes_of<EarlyCoatNote>(plan.notes).empty());
  CHECK_FALSE(notes_of<AdhesionNote>(plan.notes).empty());
  const Operation* second = nullptr;
  for (const Operation& op : plan.list.operations) {
    if (op.kind == OperationKind::sand_between && op.coat == 2) CHECK(op.skipped());
    if (op.key == both_2) second = &op;
  }
  REQUIRE(second);
  REQUIRE(second->done->counts_from);
  CHECK(*second->done->counts_from > second->done->time.end);
  CHECK(second->done->films_wet > 1.5);
  CHECK(second->done->films_wet <= 2);
}

TEST_CASE("a coat that was insisted on and yet had waited long enough costs nothing") {
  Job job = early_job("oil_polyurethane", {});
  job.history.entries.push_back(
      entry(3, LogKind::done, "top/finish/coat-2/both/sand-p240", "2027-04-08T18:30Z"));
  job.history.entries.push_back(insisted_coat(both_2, instant("2027-04-08T20:00Z")));
  const Plan plan = planned_again(job, "2027-04-08T20:05Z");
  CHECK(plan.early.empty());
  CHECK(notes_of<EarlyCoatNote>(plan.notes).empty());
  CHECK(notes_of<AdhesionNote>(plan.notes).empty());
}

TEST_CASE("sanding that the log leaves out is a warning that stays") {
  const Job job = early_job(
      "oil_polyurethane",
      {entry(2, LogKind::skipped, "top/finish/coat-2/both/sand-p240", "2027-04-08T18:00Z")});
  const Plan plan = planned_again(job, "2027-04-08T18:05Z");
  const auto told = notes_of<AdhesionNote>(plan.notes);
  REQUIRE_FALSE(told.empty());
  CHECK(told[0].cause == AdhesionNote::Cause::left_out);
}

}  // namespace
}  // namespace tackfree
