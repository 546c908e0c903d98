#include "tackfree/logged/left_out.hpp"

#include <algorithm>
#include <string>

#include "plan/planned_log.hpp"
#include "told_notes.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

constexpr const char* tuesday_evening = "2027-04-06T20:00Z";

std::vector<int> lines_of(const std::vector<LeftOutLine>& left_out) {
  std::vector<int> lines;
  for (const LeftOutLine& line : left_out) lines.push_back(line.line);
  return lines;
}

LogEntry tin_of(int id, const std::string& coating) {
  LogEntry line = entry(id, LogKind::tin, "", "2027-04-06T12:00Z");
  line.coating = coating;
  line.tin = TinEvent::bought;
  line.amount = litres(1);
  return line;
}

TEST_CASE("a plan is the same with lines that do not fit the job as without them") {
  const std::vector<LogEntry> good{coat(1, back_1, "2027-04-06T19:33Z")};
  LogEntry later = entry(5, LogKind::air, "", "2027-04-06T20:01Z");
  later.temperature = celsius(2);
  std::vector<LogEntry> all = good;
  all.push_back(coat(2, "gone/finish/coat-1/back/coat", "2027-04-06T19:00Z"));
  all.push_back(tin_of(3, "gone"));
  all.push_back(fault(4, "gone/finish/coat-1/back/coat", "2027-04-06T19:00Z", Fault::runs));
  all.push_back(later);
  all.push_back(entry(6, LogKind::done, "top/finish/coat-1/both/turn-over", "2027-04-06T18:00Z"));
  const Plan without = planned_log(good, tuesday_evening), with = planned_log(all, tuesday_evening);
  CHECK(lines_of(with.job.history.left_out) == std::vector{2, 3, 4, 5, 6});
  REQUIRE(with.schedule.steps.size() == without.schedule.steps.size());
  for (std::size_t i = 0; i < with.schedule.steps.size(); ++i) {
    CHECK(with.schedule.steps[i].pieces == without.schedule.steps[i].pieces);
    CHECK(with.schedule.steps[i].reaches == without.schedule.steps[i].reaches);
  }
}

TEST_CASE("what only fits together with a line that is left out is left out with it") {
  // The repair is work of the job only as long as the fault is in the log.
  const Plan repaired = planned_log(
      {coat(1, back_1, "2027-04-05T19:00Z"), fault(2, back_1, "2027-04-06T10:00Z", Fault::runs)},
      tuesday_evening);
  const auto repair = std::ranges::find_if(repaired.list.operations, [](const Operation& op) {
    return op.kind == OperationKind::repair;
  });
  REQUIRE(repair != repaired.list.operations.end());
  const LogEntry done = entry(3, LogKind::done, repair->key, "2027-04-06T19:00Z");
  const auto left_out = [&](const char* seen) {
    Job job = logged_job(
        {coat(1, back_1, "2027-04-05T19:00Z"), fault(2, back_1, seen, Fault::runs), done});
    return lines_of(fitting_history(job, instant(tuesday_evening)).left_out);
  };
  CHECK(left_out("2027-04-06T10:00Z").empty());
  CHECK(left_out("2027-04-06T20:30Z") == std::vector{2, 3});
}

TEST_CASE("a coat that ended before one that is two below it is left out") {
  const std::vector<LogEntry> lines{coat(1, back_1, "2027-04-06T19:30Z"),
                                    coat(2, back_2, "2027-04-06T18:00Z")};
  CHECK(lines_of(fitting_history(logged_job(lines), instant(tuesday_evening)).left_out) ==
        std::vector{2});
}

TEST_CASE("each line that is left out is told with the command that withdraws it") {
  Job job = logged_job({tin_of(7, "gone")});
  job.file = "my bench's job.json";
  job.history.left_out.push_back(
      {3,
       0,
       {{.file = "x", .line = 3, .wanted = "one"}, {.file = "x", .line = 3, .wanted = "two"}}});
  job.history = fitting_history(job, instant(tuesday_evening));
  const Problems problems = left_out_problems(job);
  REQUIRE(problems.size() == 3);
  CHECK(problems[0].hint.empty());
  CHECK(problems[1].hint ==
        R"(to withdraw it: tackfree log withdraw 'my bench'\''s job.json' --line 3)");
  CHECK(problems[2].hint.ends_with(
      R"(to withdraw it: tackfree log withdraw 'my bench'\''s job.json' 7)"));
}

TEST_CASE("a plan notes the first three lines that it leaves out, and how many more there are") {
  std::vector<LogEntry> lines;
  for (int id = 1; id <= 5; ++id) lines.push_back(tin_of(id, "gone"));
  const Plan plan = planned_log(lines, tuesday_evening);
  const auto told = testing::notes_of<LeftOutNote>(plan.notes);
  REQUIRE(told.size() == 3);
  CHECK(told[0].mistake.found == "gone");
  CHECK(told[0].mistake.wanted == "wanted a coating of the job");
  const auto more = testing::notes_of<MoreLeftOutNote>(plan.notes);
  REQUIRE(more.size() == 1);
  CHECK(more[0].mistakes == 2);
}

}  // namespace
}  // namespace tackfree
