#include "tackfree/input/last_plan_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const std::string plan = R"({"tackfree_plan": 1, "job": {"id": "bench", "name": "Bench"},
 "now_at": "2027-04-08T21:45:00Z", "ready_at": null,
 "steps": [{"key": "top/varnish/coat-1/show/coat", "title": "coat 1", "work_min": 7,
            "begin_at": "2027-04-09T22:30:00Z", "end_at": "2027-04-09T22:40:00Z"}],
 "calendar": [{"uid": "u@x", "summary": "coat 1", "category": "coating", "content": "0f",
               "begin_at": "2027-04-09T22:30:00Z", "end_at": "2027-04-09T22:40:00Z",
               "sequence": 3, "cancelled": true}]})";

std::optional<LastPlan> last(const std::string& text, Problems& problems) {
  return parse_last_plan(text, "plan.json", "bench", problems);
}

}  // namespace

TEST_CASE("a plan's steps and the revisions of its events are read, and the rest passed over") {
  Problems problems;
  const auto read = last(plan, problems);
  REQUIRE(read);
  CHECK(problems.empty());
  CHECK(read->now == parse_instant("2027-04-08T21:45Z"));
  CHECK_FALSE(read->ready_at);
  REQUIRE(read->steps.size() == 1);
  CHECK(read->steps[0].key == "top/varnish/coat-1/show/coat");
  CHECK(read->steps[0].time.length() == Minutes(10));
  CHECK_FALSE(read->steps[0].done);
  REQUIRE(read->events.size() == 1);
  CHECK(read->events[0].sequence == 3);
  CHECK(read->events[0].cancelled);
  CHECK(read->events[0].person.empty());
  const auto own = last(replaced(plan, R"("cancelled": true)", R"("person": "Ana")"), problems);
  REQUIRE(own);
  CHECK(own->events[0].person == "Ana");
}

TEST_CASE("a plan of another job, no plan, and a plan with parts missing are mistakes") {
  Problems problems;
  CHECK_FALSE(last(replaced(plan, R"("id": "bench")", R"("id": "shelf")"), problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].wanted.find("\"bench\", not of \"shelf\"") != std::string::npos);
  problems.clear();
  CHECK_FALSE(last("{}", problems));
  CHECK(problems.at(0).key == "tackfree_plan");
  problems.clear();
  CHECK_FALSE(last(
      replaced(replaced(plan, R"("calendar")", R"("agenda")"), R"("2027-04-08T21:45:00Z")", "5"),
      problems));
  CHECK(problems.size() == 3);
  problems.clear();
  CHECK_FALSE(last("{", problems));
  CHECK(problems.size() == 1);
}

TEST_CASE("a mistake names the file that the plan was read from") {
  Problems problems;
  CHECK_FALSE(parse_last_plan(plan, "other.json", "shelf", problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "other.json");
}

TEST_CASE("a kept plan has the plan and the one before it, each with its steps and events") {
  Problems problems;
  const std::string last = replaced(plan, R"("tackfree_plan": 1, )", "");
  const auto read = [&](const std::string& text) {
    return parse_kept_plan(text, "bench.kept.json", "bench", problems);
  };
  const std::string text = R"({"tackfree_kept_plan": 1, "digest": "0af", "plan": )" + last +
                           R"(, "before": )" +
                           replaced(last, R"("sequence": 3)", R"("sequence": 2)") + "}";
  const auto kept = read(text);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  REQUIRE(kept);
  CHECK(kept->digest == "0af");
  REQUIRE(kept->plan.events.size() == 1);
  CHECK(kept->plan.events[0].sequence == 3);
  REQUIRE(kept->before);
  CHECK(kept->before->events.at(0).sequence == 2);
  CHECK(kept->before->steps.size() == 1);
  const auto first = read(R"({"tackfree_kept_plan": 1, "digest": "0af", "plan": )" + last +
                          R"(, "before": null})");
  REQUIRE(first);
  CHECK_FALSE(first->before);
}

TEST_CASE("a kept plan of another job, of another version, or with parts missing is a mistake") {
  const auto first_mistake = [&](const std::string& text) {
    Problems problems;
    CHECK_FALSE(parse_kept_plan(text, "bench.kept.json", "bench", problems));
    return problems.empty() ? "" : problems.front().key;
  };
  const std::string last = replaced(plan, R"("tackfree_plan": 1, )", "");
  CHECK(first_mistake(plan) == "tackfree_kept_plan");
  CHECK(first_mistake(R"({"tackfree_kept_plan": 2, "digest": "", "plan": )" + last + "}") ==
        "tackfree_kept_plan");
  CHECK(first_mistake(R"({"tackfree_kept_plan": 1, "digest": "0af"})") == "plan");
  CHECK(first_mistake(R"({"tackfree_kept_plan": 1, "plan": )" + last + "}") == "digest");
  CHECK(first_mistake(R"({"tackfree_kept_plan": 1, "digest": "0af", "plan": )" +
                      replaced(last, R"("id": "bench")", R"("id": "shelf")") + "}") == "job.id");
}

TEST_CASE("a plan of thousands of steps is read, though no job file may be so long") {
  std::string step = R"({"key": "a", "title": "b", "begin_at": "2027-04-09T22:30:00Z",
      "end_at": "2027-04-09T22:40:00Z"})";
  std::string steps;
  for (int i = 0; i < 60'000; ++i) steps += (i > 0 ? "," : "") + step;
  Problems problems;
  const std::size_t begin = plan.find("\"steps\": [") + 10;
  std::string text = plan;
  text.replace(begin, text.find("],", begin) - begin, steps);
  const auto read = last(text, problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  REQUIRE(read);
  CHECK(read->steps.size() == 60'000);
}
