#include "tackfree/input/shop_rules_reader.hpp"

#include "input/bench_copy.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const std::string frame = "{ \"name\": \"frame\", \"system\": \"bench varnish\"";

/// More keys for the frame of the bench, and for the job.
void extend(BenchCopy& bench, const std::string& batch, const std::string& job = "") {
  bench.text = replaced(bench.text, frame, frame + (batch.empty() ? "" : ", " + batch));
  if (!job.empty()) bench.text = replaced(bench.text, "\"units\"", job + ", \"units\"");
}

}  // namespace

TEST_CASE("dates, rooms and people of a shop are read") {
  BenchCopy bench;
  extend(bench,
         R"("pins": [{ "coat": 1, "on": "2027-04-17", "from": "09:00", "to": "12:00" }],
         "no_coating_on": ["2027-04-24"], "not_before": "2027-04-10", "room": "attic")",
         R"("rooms": [{ "name": "garage", "drying_space_m2": 3 },
                   { "name": "attic", "drying_places": 9 }],
         "no_coating_on": ["2027-05-01"], "ready_by": "2027-05-31",
         "people": [{ "name": "Ada" },
                    { "name": "Ben", "weekly": { "sun": ["10:00-12:00"] },
                      "days_off": ["2027-04-18"] }])");
  const Job job = bench.read_good();
  const BatchRules& rules = job.batches[1].rules;
  REQUIRE(rules.pins.size() == 1);
  CHECK(rules.pins[0].step == find_named(job.systems, job.batches[1].system)->steps[0].name);
  CHECK(rules.pins[0].between == DayWindow{540, 720});
  CHECK(rules.no_coating_on.size() == 2);
  // Midnight in New York, summer time.
  CHECK(iso_utc(*rules.not_before) == "2027-04-10T04:00:00Z");
  CHECK(iso_utc(*rules.ready_by) == "2027-06-01T04:00:00Z");
  CHECK(rules.room == 1);
  CHECK(job.batches[0].rules.room == 0);
  CHECK(job.batches[0].rules.ready_by == rules.ready_by);
  REQUIRE(job.people.size() == 2);
  CHECK(job.people[0].hours.weekly == job.calendar.weekly);
  CHECK(job.people[1].hours.weekly[6] == std::vector<DayWindow>{{600, 720}});
  CHECK(job.people[1].hours.weekly[5].empty());
  CHECK(job.people[1].hours.days_off.size() == job.calendar.days_off.size() + 1);
}

TEST_CASE("nine people plan together, a tenth is refused") {
  const auto people = [](int count) {
    std::string text = R"("people": [{ "name": "P1" })";
    for (int i = 2; i <= count; ++i) text += R"(, { "name": "P)" + std::to_string(i) + R"(" })";
    return text + "]";
  };
  BenchCopy nine, ten;
  extend(nine, "", people(9));
  CHECK(nine.read_good().people.size() == 9);
  extend(ten, "", people(10));
  const Problems problems = ten.read_bad();
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].key == "people");
  CHECK(problems[0].wanted ==
        "wanted at most nine people: this is for home makers and small shops");
  CHECK(problems[0].hint ==
        "list those whose hours matter, or plan part of the work in a job of "
        "its own");
}

TEST_CASE("rules that do not make sense are named, all in one run") {
  struct Case {
    const char* batch;
    const char* job;
    const char* wanted;
  };
  const Case cases[] = {
      {R"("pins": [{ "coat": 1, "on": "17 April" }])", "", "wanted a date"},
      {R"("pins": [{ "coat": 1, "on": "2027-04-17", "from": "12:00", "to": "09:00" }])", "",
       "after the pin's"},
      {R"("pins": [{ "coat": 1, "on": "2027-04-17", "from": "noon" }])", "", "clock time"},
      {R"("pins": [{ "coat": 21, "on": "2027-04-17" }])", "", "coat's number"},
      {R"("pins": [{ "coat": 1, "step": "varnsh", "on": "2027-04-17" }])", "", "name of a step of"},
      {R"("pins": [{ "coat": 1, "on": "2027-04-17" }], "no_coating_on": ["2027-04-17"])", "",
       "a day without coating"},
      {R"("pins": [{ "coat": 1, "on": "2027-04-17" }], "not_before": "2027-04-18")", "",
       "over before the batch"},
      {R"("not_before": "2027-05-18", "ready_by": "2027-05-17")", "", "after the batch's"},
      {R"("ready_by": "soon")", "", "wanted a date or a local time"},
      {R"("room": "attic")", "", "one of the job's \"rooms\""},
      {"", R"("rooms": [{ "name": "a", "drying_space_m2": 3, "drying_places": 2 }])",
       "not in both"},
      {"", R"("rooms": [{ "name": "a b" }, { "name": "A-B" }])", "name of its own"},
      {"", R"("people": [{ "name": "Ada", "busy_files": ["none.ics"] }])", ""},
      {"", R"("people": [{ "name": "Ada", "weekly": { "mon": ["9-5"] } }])", "wanted hours"},
  };
  for (const Case& each : cases) {
    CAPTURE(each.batch);
    CAPTURE(each.job);
    BenchCopy bench;
    extend(bench, each.batch, each.job);
    const Problems problems = bench.read_bad();
    REQUIRE(problems.size() == 1);
    CHECK_MESSAGE(holds(problems[0].wanted, each.wanted), all_text(problems));
  }
}
