#include "tackfree/evening/log_entry.hpp"

#include "tackfree/operations/repairs.hpp"

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

struct Heard {
  std::optional<UnderstoodReport> told;
  Problems problems;
};

Heard heard(const Report& report, const char* now, std::vector<LogEntry> entries = {}) {
  Heard result;
  result.told = understood(logged_job(std::move(entries)), report, instant(now), result.problems);
  return result;
}

Report of(LogKind kind, const char* at) { return {.kind = kind, .at = instant(at)}; }

constexpr const char* tuesday = "2027-04-06T20:00Z";

TEST_CASE("a fault is told with the advice of its class when it is logged") {
  Report runs = of(LogKind::fault, tuesday);
  runs.fault = Fault::runs;
  const Heard told = heard(runs, tuesday, {coat(1, back_1, "2027-04-06T19:00Z")});
  REQUIRE(told.told);
  const Job job = sample_job();
  const RepairAdvice advice{repair_advice(job, job.coatings[0], Fault::runs)};
  CHECK(advice.line.size() > 20);
  CHECK(told.told->consequences == std::vector<Consequence>{advice});
}

TEST_CASE("a coat without a number or a side is the next one of the only batch") {
  const Heard first = heard(of(LogKind::coat, "2027-04-06T19:30Z"), tuesday);
  REQUIRE(first.told);
  CHECK(first.told->entry.step == back_1);
  CHECK(first.told->entry.written_at == instant(tuesday));
  CHECK(first.told->consequences.empty());
}

TEST_CASE(
    "a coat on one that is not dry is refused, and taken with its consequence when insisted") {
  const std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:00Z")};
  Report report = of(LogKind::coat, "2027-04-06T20:00Z");
  const Heard early = heard(report, tuesday, log);
  CHECK_FALSE(early.told);
  REQUIRE(early.problems.size() == 1);
  CHECK(early.problems[0].hint.find("--insist") != std::string::npos);
  report.insists = true;
  const Heard insisted = heard(report, tuesday, log);
  REQUIRE(insisted.told);
  CHECK(insisted.told->entry.insisted);
  CHECK_FALSE(insisted.told->consequences.empty());
  CHECK(heard(of(LogKind::coat, "2027-04-08T20:00Z"), "2027-04-08T20:00Z", log).told);
}

TEST_CASE("a coat over one that is not in the log is refused") {
  Report report = of(LogKind::coat, tuesday);
  report.coat = 2;
  const Heard skipping = heard(report, tuesday);
  CHECK_FALSE(skipping.told);
  CHECK(skipping.problems.at(0).wanted.find("in the log first") != std::string::npos);
}

TEST_CASE("what is done, to come, or of no batch of the job is refused by name") {
  Report report = of(LogKind::coat, "2027-04-06T19:00Z");
  report.coat = 1;
  report.side = "back";
  const Heard twice = heard(report, tuesday, {coat(1, back_1, "2027-04-06T18:30Z")});
  REQUIRE(twice.problems.size() == 1);
  CHECK(twice.problems[0].hint == "to put that line right, add --corrects 1");
  CHECK(heard(of(LogKind::note, "2027-04-06T20:01Z"), tuesday).problems.at(0).key == "--at");
  report.batch = "tpo";
  CHECK(heard(report, tuesday).problems.at(0).hint == "did you mean \"top\"?");
  report.batch = "top";
  report.side = "bakc";
  CHECK(heard(report, tuesday).problems.at(0).hint == "did you mean \"back\"?");
  Report correcting = of(LogKind::note, tuesday);
  correcting.corrects = 5;
  CHECK(heard(correcting, tuesday).problems.at(0).key == "--corrects");
}

TEST_CASE("top and bottom are the sides as the batch lies") {
  Report report = of(LogKind::coat, "2027-04-06T19:00Z");
  report.side = "bottom";
  CHECK(heard(report, tuesday).told->entry.step == back_1);
}

TEST_CASE("other work is named by the end of its key, the next one where it is not named") {
  Report report = of(LogKind::done, "2027-04-05T19:00Z");
  const Heard next = heard(report, tuesday);
  REQUIRE(next.told);
  CHECK(next.told->entry.step.find("/bare/both/sand-p") != std::string::npos);
  report.step = "turn-oevr";
  CHECK(heard(report, tuesday).problems.at(0).hint == "did you mean \"turn-over\"?");
}

TEST_CASE("a trial is of the last coat that is on, and of none where none is") {
  Report report = of(LogKind::test, tuesday);
  report.test = DryTest::thumb;
  CHECK_FALSE(heard(report, tuesday).told);
  const Heard tried = heard(report, tuesday, {coat(1, back_1, "2027-04-06T18:30Z")});
  REQUIRE(tried.told);
  CHECK(tried.told->entry.step == back_1);
}

TEST_CASE("a coat in air that was unfit is taken, and what to look for is told") {
  Report report = of(LogKind::coat, "2027-04-06T19:30Z");
  report.temperature = celsius(2);
  const Heard cold = heard(report, tuesday);
  REQUIRE(cold.told);
  REQUIRE(cold.told->consequences.size() == 1);
  CHECK(cold.told->consequences[0] == Consequence(CoatedInUnfitAir{Gate::too_cold}));
}

TEST_CASE("what comes of work too soon is told by the work: turning, sanding, coating") {
  const std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:00Z"),
                                  coat(2, show_1, "2027-04-07T19:00Z")};
  const auto hint = [&](Report report, const char* now, std::size_t lines) {
    const Heard told = heard(report, now, {log.begin(), log.begin() + static_cast<int>(lines)});
    REQUIRE(told.problems.size() == 1);
    CHECK(told.problems[0].wanted.starts_with("wanted a time from 2027-04-"));
    return told.problems[0].hint;
  };
  Report turning = of(LogKind::done, "2027-04-06T20:00Z");
  turning.step = "turn-over";
  CHECK(hint(turning, "2027-04-06T20:00Z", 1).starts_with("a side that is not dry to handle"));
  Report sanding = of(LogKind::done, "2027-04-07T20:00Z");
  sanding.step = "sand-p240";
  CHECK(hint(sanding, "2027-04-07T20:00Z", 2).starts_with("a film that is not dry to sand"));
  CHECK(hint(of(LogKind::coat, "2027-04-07T20:00Z"), "2027-04-07T20:00Z", 2)
            .ends_with("if it was so all the same, add --insist"));
  sanding.insists = true;
  const Heard insisted = heard(sanding, "2027-04-07T20:00Z", log);
  REQUIRE(insisted.told);
  REQUIRE(insisted.told->consequences.size() == 1);
  CHECK(insisted.told->consequences[0] == Consequence(TooSoon::sanded));
}

TEST_CASE(
    "a time that would do is told as the command takes it: the end, or the begin with --from") {
  const std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:00Z")};
  Report turning = of(LogKind::done, "2027-04-06T20:00Z");
  turning.step = "turn-over";
  const Heard by_end = heard(turning, tuesday, log);
  REQUIRE(by_end.problems.size() == 1);
  CHECK(by_end.problems[0].key == "--at");
  CHECK(by_end.problems[0].found == "2027-04-06 20:00");
  turning.began_at = instant("2027-04-06T19:40Z");
  const Heard by_begin = heard(turning, tuesday, log);
  REQUIRE(by_begin.problems.size() == 1);
  CHECK(by_begin.problems[0].key == "--from");
  CHECK(by_begin.problems[0].found == "2027-04-06 19:40");
}

TEST_CASE("a coat that took far more than expected is asked about before it is written") {
  Report report = of(LogKind::coat, "2027-04-06T19:30Z");
  report.amount = litres(0.12);
  CHECK(heard(report, tuesday).told.value().consequences.empty());
  report.amount = litres(1.2);
  const Heard much = heard(report, tuesday);
  REQUIRE(much.told);
  REQUIRE(much.told->consequences.size() == 1);
  REQUIRE(std::holds_alternative<FarFromExpected>(much.told->consequences[0]));
  CHECK(std::get<FarFromExpected>(much.told->consequences[0]).times > 4);
  report.insists = true;
  CHECK(heard(report, tuesday).told.value().consequences.empty());
}

TEST_CASE("sanding beside a wet coat is taken, and the coat that took the dust is named") {
  Job job = logged_job({coat(1, back_1, "2027-04-06T19:00Z")});
  add_legs(job);
  Report sanding = of(LogKind::done, "2027-04-06T19:50Z");
  sanding.batch = "legs";
  Problems problems;
  const auto wet = understood(job, sanding, instant(tuesday), problems);
  REQUIRE(wet);
  REQUIRE(wet->consequences.size() == 1);
  REQUIRE(std::holds_alternative<DustInCoat>(wet->consequences[0]));
  CHECK(wet->standing.list.operations.at(std::get<DustInCoat>(wet->consequences[0]).coat).key ==
        back_1);
  sanding.at = instant("2027-04-07T19:50Z");
  const auto dry = understood(job, sanding, instant("2027-04-07T20:00Z"), problems);
  REQUIRE(dry);
  CHECK(dry->consequences.empty());
  // A batch without a room is in the first one.
  job.rooms = {{"shed", std::nullopt, std::nullopt, 0}, {"attic", std::nullopt, std::nullopt, 0}};
  job.batches[1].rules.room = 1;
  sanding.at = instant("2027-04-06T19:50Z");
  CHECK(understood(job, sanding, instant(tuesday), problems).value().consequences.empty());
}

TEST_CASE("nothing is left out before its turn, however one insists") {
  Report skipping = of(LogKind::skipped, tuesday);
  skipping.step = "sand-p320";
  skipping.insists = true;
  const Heard early = heard(skipping, tuesday);
  CHECK_FALSE(early.told);
  REQUIRE_FALSE(early.problems.empty());
  CHECK(early.problems[0].hint == "leave it out when its turn has come");
}

TEST_CASE("a thinner and a person that the job does not have are refused, and nothing bought is") {
  Report spirits = of(LogKind::tin, "2027-04-06T19:00Z");
  spirits.tin = TinEvent::bought;
  spirits.amount = litres(1);
  spirits.thinner = "mineral spirits";
  const Heard bought = heard(spirits, tuesday);
  REQUIRE(bought.told);
  CHECK(bought.told->entry.thinner == "mineral spirits");
  CHECK(bought.told->entry.coating.empty());
  spirits.thinner = "mineral spirit";
  CHECK(heard(spirits, tuesday).problems.at(0).key == "--thinner");
  CHECK(heard(of(LogKind::bought, "2027-04-06T19:00Z"), tuesday).problems.at(0).key ==
        "bought-all");
  Report away = of(LogKind::away, "2027-04-06T20:00Z");
  away.hours = Interval{instant("2027-04-07T00:00Z"), instant("2027-04-08T00:00Z")};
  CHECK(heard(away, tuesday).told);
  away.person = "Ada";
  CHECK(heard(away, tuesday).problems.at(0).key == "--person");
  away.person.clear();
  away.hours = Interval{instant("2027-04-05T00:00Z"), instant("2027-04-06T00:00Z")};
  CHECK(heard(away, tuesday).problems.at(0).key == "--until");
}

}  // namespace
}  // namespace tackfree
