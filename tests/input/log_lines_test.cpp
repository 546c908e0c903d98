#include "tackfree/input/log_lines.hpp"

#include "tackfree/base/name.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const std::string coat =
    R"({"id":1,"written_at":"2027-04-09T20:15-04:00","kind":"coat","at":"2027-04-09T20:10-04:00",)"
    R"("step":"top/varnish/coat-1/show/coat","amount_l":0.35,"temperature_c":12.5,)"
    R"("humidity_pct":71})";
const std::string test =
    R"({"id":2,"written_at":"2027-04-10T09:00Z","kind":"test","step":"s","test":"thumb","passed":false})";

const std::string rags =
    R"({"id":1,"written_at":"2027-04-09T22:00-04:00","kind":"rags","at":"2027-04-09T21:40-04:00"})";

std::string air_line(int id, const std::string& rest = "") {
  return R"({"id":)" + std::to_string(id) +
         R"(,"written_at":"2027-04-10T10:00Z","kind":"air","temperature_c":10)" + rest + "}";
}

struct Read {
  History history;
  Problems problems;
};

Read read(const std::string& lines, const std::string& torn = "") {
  Read result;
  result.history = read_log({lines, torn}, "x.jsonl");
  for (const LeftOutLine& line : result.history.left_out)
    result.problems.insert(result.problems.end(), line.why.begin(), line.why.end());
  return result;
}

Instant moment(const char* text) { return parse_instant(text).value(); }

}  // namespace

TEST_CASE("a line tells when, which step, how much and in which air") {
  const Read log = read(coat + "\n" + test + "\n");
  REQUIRE(log.problems.empty());
  REQUIRE(log.history.entries.size() == 2);
  const LogEntry& entry = log.history.entries[0];
  CHECK(entry.kind == LogKind::coat);
  CHECK(entry.at == moment("2027-04-10T00:10Z"));
  CHECK(entry.written_at == moment("2027-04-10T00:15Z"));
  CHECK(entry.step == "top/varnish/coat-1/show/coat");
  CHECK(entry.amount->in(litres) == doctest::Approx(0.35));
  CHECK(entry.temperature->in_celsius() == doctest::Approx(12.5));
  CHECK(entry.humidity->in(humidity_percent) == doctest::Approx(71));
  CHECK(log.history.entries[1].test == DryTest::thumb);
  CHECK_FALSE(log.history.entries[1].passed);
  CHECK(log.history.entries[1].at == moment("2027-04-10T09:00Z"));
  CHECK(log.history.next_id == 3);
}

TEST_CASE("rags that are dealt with are a line of their own, of no step and no coating") {
  const Read log = read(rags + "\n");
  REQUIRE(log.problems.empty());
  CHECK(log.history.entries.at(0).kind == LogKind::rags);
  CHECK(log.history.entries[0].at == moment("2027-04-10T01:40Z"));
  const std::string of_a_step = rags.substr(0, rags.size() - 1) + R"(,"step":"s"})";
  CHECK(read(of_a_step + "\n").problems.size() == 1);
}

TEST_CASE("a line that was written is read back as it was") {
  const Zone zone = Zone::named("America/New_York").value();
  for (const std::string& line :
       {coat, test, rags, air_line(7, R"(,"corrects":3,"note":"by the door, \"shut\"")")}) {
    CAPTURE(line);
    const Read once =
        read((line.find("corrects") != std::string::npos ? air_line(3) + "\n" : "") + line + "\n");
    REQUIRE(once.problems.empty());
    const std::string written = log_line(once.history.entries.back(), zone);
    Read again = read((line.find("corrects") != std::string::npos ? air_line(3) + "\n" : "") +
                      written + "\n");
    CHECK(again.problems.empty());
    REQUIRE(again.history.entries.size() == once.history.entries.size());
    CHECK(log_line(again.history.entries.back(), zone) == written);
    CHECK(again.history.entries.back().note == once.history.entries.back().note);
  }
}

TEST_CASE("a corrected line counts no more, a withdrawn one neither, and both numbers stay taken") {
  const Read log = read(air_line(1) + "\n" + air_line(2) + "\n" + air_line(3, R"(,"corrects":1)") +
                        "\n" + R"({"id":4,"written_at":"2027-04-10T11:00Z","kind":"withdrawn",)" +
                        R"("corrects":2})" + "\n");
  REQUIRE(log.problems.empty());
  REQUIRE(log.history.entries.size() == 1);
  CHECK(log.history.entries[0].id == 3);
  CHECK(log.history.next_id == 5);
}

TEST_CASE("every mistake of a log is named in one run, with its line") {
  const Read log = read(air_line(1) + "\n{\"id\":2,\n" + air_line(1) + "\n" +
                        air_line(4, R"(,"corrects":9)") + "\n" + air_line(5, R"(,"litre":1)") +
                        "\n" + R"({"id":6,"written_at":"later","kind":"coated"})" + "\n[]\n");
  std::vector<int> lines;
  for (const Problem& problem : log.problems) {
    CHECK(problem.file == "x.jsonl");
    lines.push_back(problem.line);
  }
  CHECK(lines == std::vector<int>{2, 3, 4, 5, 6, 6, 7});
  CHECK(to_text(log.problems[5]).find("did you mean \"coat\"?") != std::string::npos);
}

TEST_CASE("a log cut at any byte keeps every line that ended before the cut") {
  const std::string whole = coat + "\n" + test + "\n" + air_line(3) + "\n";
  for (std::size_t cut = 0; cut <= whole.size(); ++cut) {
    const std::string text = whole.substr(0, cut);
    const std::size_t end = text.rfind('\n') + 1;
    const Read log = read(text.substr(0, end), text.substr(end));
    CAPTURE(cut);
    REQUIRE(log.problems.empty());
    const auto ended = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
    const bool whole_but_for_its_end = cut < whole.size() && whole[cut] == '\n' && end != cut;
    CHECK(log.history.entries.size() == ended + (whole_but_for_its_end ? 1 : 0));
    CHECK(log.history.torn == (whole_but_for_its_end ? "" : text.substr(end)));
  }
}

namespace {

std::string withdrawing(int id, const std::string& what) {
  return R"({"id":)" + std::to_string(id) +
         R"(,"written_at":"2027-04-10T11:00Z","kind":"withdrawn",)" + what + "}";
}

}  // namespace

TEST_CASE("a line that cannot be read is left out with its place and its number, and no other is") {
  const Read log =
      read(air_line(1) + "\n" + air_line(7, R"(,"litre":1)") + "\n{\n" + air_line(8) + "\n");
  REQUIRE(log.history.left_out.size() == 2);
  CHECK(log.history.left_out[0].line == 2);
  CHECK(log.history.left_out[0].id == 7);
  CHECK(log.history.left_out[1].line == 3);
  CHECK(log.history.left_out[1].id == 0);
  CHECK(log.history.entries.size() == 2);
  CHECK(log.history.next_id == 9);
}

TEST_CASE("lines that cannot be read are withdrawn by number, or by place where they have none") {
  const std::string bad = air_line(7, R"(,"litre":1)") + "\n{\n" + air_line(7) + "\n";
  const Read by_number = read(bad + withdrawing(8, R"("corrects":7)") + "\n");
  REQUIRE(by_number.history.left_out.size() == 2);
  CHECK(by_number.history.left_out[0].line == 2);
  const Read all =
      read(bad + withdrawing(8, R"("corrects":7)") + "\n" + withdrawing(9, R"("corrects_line":2)") +
           "\n" + withdrawing(10, R"("corrects_line":3)") + "\n");
  CHECK(all.problems.empty());
  CHECK(all.history.entries.empty());
}

TEST_CASE("a line with a number is not withdrawn by its place: another may stand there now") {
  for (const char* what : {R"("corrects_line":1)", R"("corrects_line":2)", R"("corrects_line":9)",
                           R"("corrects_line":0)"}) {
    CAPTURE(what);
    const Read log = read(air_line(1) + "\n" + withdrawing(2, what) + "\n");
    REQUIRE(log.problems.size() == 1);
    CHECK(log.problems[0].key == "corrects_line");
    CHECK(log.history.entries.size() == 1);
  }
}

TEST_CASE("after the highest number the lowest free one is next") {
  CHECK(read(air_line(1) + "\n" + air_line(1'000'000'000) + "\n").history.next_id == 2);
  CHECK(read("").history.next_id == 1);
}

TEST_CASE("a purchase, a thinner's tin and somebody's hours come back as they were written") {
  LogEntry all{.id = 1, .kind = LogKind::bought, .written_at = moment("2027-04-09T20:00Z")};
  all.at = all.written_at;
  all.bought = {{"varnish", "1 qt", litres(0.946353), 2, false},
                {"mineral spirits", "", litres(0.5), 1, true}};
  LogEntry tin = all;
  tin.id = 2;
  tin.kind = LogKind::tin;
  tin.bought.clear();
  tin.thinner = "mineral spirits";
  tin.tin = TinEvent::bought;
  tin.amount = litres(1);
  LogEntry away{.id = 3, .kind = LogKind::away, .written_at = all.at, .at = all.at};
  away.person = "Ada";
  away.hours = Interval{moment("2027-04-15T20:00Z"), moment("2027-04-16T00:00Z")};
  const Zone zone = *Zone::named("America/New_York");
  const Read log =
      read(log_line(all, zone) + "\n" + log_line(tin, zone) + "\n" + log_line(away, zone) + "\n");
  for (const Problem& problem : log.problems) FAIL_CHECK(to_text(problem));
  REQUIRE(log.history.entries.size() == 3);
  const LogEntry& bought = log.history.entries[0];
  REQUIRE(bought.bought.size() == 2);
  CHECK(bought.bought[0].product == "varnish");
  CHECK(bought.bought[0].size == "1 qt");
  CHECK(bought.bought[0].count == 2);
  CHECK(bought.bought[0].each.in(litres) == doctest::Approx(0.946353));
  CHECK(bought.bought[1].thinner);
  CHECK(log.history.entries[1].thinner == "mineral spirits");
  CHECK(log.history.entries[1].coating.empty());
  CHECK(log.history.entries[2].person == "Ada");
  CHECK(log.history.entries[2].hours == away.hours);
}

TEST_CASE("hours that end before they begin, and a purchase of nothing, are wrong") {
  const std::string head = R"({"id":1,"written_at":"2027-04-10T10:00Z","kind":)";
  CHECK(read(head + R"("away","from":"2027-04-15T20:00Z","until":"2027-04-15T20:00Z"})" + "\n")
            .problems.size() == 1);
  CHECK(read(head + R"("free","from":"2027-04-15T20:00Z"})" + "\n").problems.size() == 1);
  CHECK(read(head + R"("bought","tins":[]})" + "\n").problems.size() == 1);
  CHECK(read(head + R"("bought","tins":[{"coating":"x"}]})" + "\n").problems.size() == 1);
}
