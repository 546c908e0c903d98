#include "tackfree/cli/log_command.hpp"

#include "tackfree/cli/run.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include <doctest/doctest.h>
#include <unistd.h>

namespace tackfree {
namespace {

namespace fs = std::filesystem;

/// A starter job in a folder of its own.
class StarterJob {
 public:
  StarterJob() : path_(fs::temp_directory_path() / ("tackfree_log_" + std::to_string(::getpid()))) {
    fs::remove_all(path_);
    tell({"start", path_.string()});
    for (const auto& file : fs::directory_iterator(path_))
      if (file.path().extension() == ".json") job_ = file.path();
  }
  StarterJob(const StarterJob&) = delete;
  StarterJob& operator=(const StarterJob&) = delete;
  ~StarterJob() { fs::remove_all(path_); }

  int tell(const std::vector<std::string>& arguments) {
    std::ostringstream out, err;
    const int code = tackfree::run(arguments, out, err);
    said = out.str() + err.str();
    return code;
  }
  /// `log KIND JOB ...` at a time that the job is planned from.
  int log(const std::string& kind, std::vector<std::string> rest) {
    std::vector<std::string> all{"log", kind, job_.string()};
    all.insert(all.end(), rest.begin(), rest.end());
    return tell(all);
  }
  std::string text() const {
    fs::path log = job_;
    log.replace_extension(".log.jsonl");
    return bytes(log);
  }
  static std::string bytes(const fs::path& of) {
    std::ifstream file(of, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  std::string file() const { return job_.string(); }
  fs::path beside(const std::string& name) const { return path_ / name; }
  fs::path log_file() const {
    fs::path log = job_;
    return log.replace_extension(".log.jsonl");
  }
  void put(const std::string& lines) const { std::ofstream(log_file(), std::ios::binary) << lines; }
  /// Exit codes of the commands that go on from the log, as of `now`.
  std::vector<int> others(const std::string& now) {
    std::vector<int> codes;
    for (const char* command : {"plan", "tonight", "buy"})
      codes.push_back(tell({command, job_.string(), "--now", now}));
    codes.push_back(log("show", {"--now", now}));
    return codes;
  }
  std::string said;

 private:
  fs::path path_, job_;
};

TEST_CASE("lines are numbered one after another and only added") {
  StarterJob job;
  CHECK(job.log("note", {"door stood open"}) == exit_done);
  CHECK(job.said.find("Written as number 1 in") != std::string::npos);
  const std::string first = job.text();
  CHECK(job.log("air", {"--air-temp-c", "14", "--humidity-pct", "60"}) == exit_done);
  CHECK(job.log("withdraw", {"1"}) == exit_done);
  const std::string all = job.text();
  CHECK(all.starts_with(first));
  CHECK(std::count(all.begin(), all.end(), '\n') == 3);
  CHECK(job.log("show", {}) == exit_done);
  CHECK(job.said.find("door stood open") == std::string::npos);
  CHECK(job.said.find("air ") != std::string::npos);
}

TEST_CASE("rags that are dealt with are logged with their hour") {
  StarterJob job;
  CHECK(job.log("rags", {"--at", "00:05", "--now", "2027-04-06T08:00", "--note", "in the can"}) ==
        exit_done);
  CHECK(job.said.find("Understood: oily rags dealt with; ") != std::string::npos);
  CHECK(job.text().find(R"("kind":"rags")") != std::string::npos);
  CHECK(job.text().find("T00:05") != std::string::npos);
  CHECK(job.log("show", {"--now", "2027-04-05T08:00"}) == exit_done);
  CAPTURE(job.said);
  CHECK(job.said.find("oily rags dealt with; \"in the can\"") != std::string::npos);
}

TEST_CASE("what is only shown or refused is not written") {
  StarterJob job;
  CHECK(job.log("note", {"a", "--only-show"}) == exit_done);
  CHECK(job.said.find("Nothing was written.") != std::string::npos);
  CHECK(job.log("air", {}) == exit_wrong_input);
  CHECK(job.log("coat", {"--coat", "99"}) == exit_wrong_input);
  CHECK(job.log("coat", {"--used", "a cup"}) == exit_wrong_input);
  CHECK(job.log("note", {"a", "--at", "2036-01-01T10:00"}) == exit_wrong_input);
  CHECK(job.text().empty());
}

TEST_CASE("the same job, log and last plan give the same bytes of text, JSON and calendar") {
  StarterJob job;
  const fs::path first = job.beside("first.json");
  CHECK(job.tell({"plan", job.file(), "--json", first.string()}) == exit_done);
  CHECK(job.log("note", {"door stood open"}) == exit_done);
  CHECK(job.log("skip", {"--batch", "top"}) == exit_done);
  std::vector<std::string> told;
  for (const char* run : {"a", "b"}) {
    const fs::path json = job.beside(std::string(run) + ".json");
    const fs::path calendar = job.beside(std::string(run) + ".ics");
    CHECK(job.tell({"plan", job.file(), "--last-plan", first.string(), "--json", json.string(),
                    "--calendar", calendar.string()}) == exit_done);
    told.push_back(job.said.substr(0, job.said.find("\nWrote ")) + "\n" + StarterJob::bytes(json) +
                   "\n" + StarterJob::bytes(calendar));
  }
  CHECK(told[0].find("Since the plan of") != std::string::npos);
  CHECK(told[0].find("BEGIN:VEVENT") != std::string::npos);
  CHECK(told[0] == told[1]);
}

TEST_CASE("every kind of work that a rule may speak against can be insisted on") {
  StarterJob job;
  for (const char* kind : {"coat", "done"}) {
    CAPTURE(kind);
    CHECK(job.log(kind, {"--batch", "top", "--insist", "--only-show"}) == exit_done);
  }
}

const std::vector<int> all_well(4, exit_done);
const std::string monday = "2027-04-05T17:45";

TEST_CASE("what would not be read back is refused, and nothing is written") {
  StarterJob job;
  const std::vector<std::vector<std::string>> refused{{"note", ""},
                                                      {"note", "  "},
                                                      {"air", "--air-temp-c", "14", "--note", " "},
                                                      {"waste", "5000 l"},
                                                      {"tin", "opened", "90 m3"},
                                                      {"skip", "--batch", "top", "--note", "\t"}};
  for (const auto& words : refused) {
    CAPTURE(words.front());
    CHECK(job.log(words.front(), {words.begin() + 1, words.end()}) == exit_wrong_input);
    CHECK(job.said.find("wanted") != std::string::npos);
    CHECK(job.text().empty());
  }
  CHECK(job.others(monday) == all_well);
}

TEST_CASE("a line that cannot be read is left out and told, with the command that withdraws it") {
  const std::string good =
      R"({"id":1,"written_at":"2027-04-05T12:00Z","kind":"note","note":"swept"})";
  struct Line {
    std::string text, withdraw;
  };
  const std::vector<Line> lines{
      {R"({"id":2,"written_at":"2027-04-05T12:00Z","kind":"air","temperature_c":99})", "2"},
      {R"({"id":3,"written_at":"2027-04-05T12:00Z","kind":"note","note":"a","litre":1})", "3"},
      {R"({"id":4,"written_at":"2027-04-05T12:00Z","kind":"note"})", "4"},
      {R"({"id":5,"written_at":)", "--line 2"},
      {R"([])", "--line 2"},
      {R"({"id":1,"written_at":"2027-04-05T12:00Z","kind":"note","note":"twice"})", "--line 2"},
      {R"({"id":0,"written_at":"2027-04-05T12:00Z","kind":"note","note":"none"})", "--line 2"}};
  StarterJob job;
  for (const Line& each : lines) {
    const std::string &line = each.text, &withdraw = each.withdraw;
    CAPTURE(line);
    job.put(good + "\n" + line + "\n");
    const std::string command = "tackfree log withdraw " + job.file() + " " + withdraw;
    const bool first = &each == lines.data();
    for (const char* name : {"tonight", "plan", "buy"}) {
      if (!first && name != std::string_view("tonight")) continue;
      CHECK(job.tell({name, job.file(), "--now", monday}) == exit_done);
      CHECK(job.said.find(".log.jsonl:2: ") != std::string::npos);
      CHECK(job.said.find(command) != std::string::npos);
    }
    CHECK(job.tell({"check", job.file(), "--now", monday}) == exit_wrong_input);
    CHECK(job.said.find(command) != std::string::npos);
    CHECK(job.log("note", {"go on", "--now", monday}) == exit_done);
    std::vector<std::string> words{"--now", monday};
    if (withdraw.starts_with("--line")) words.push_back("--line");
    words.push_back(withdraw.substr(withdraw.size() - 1));
    CHECK(job.log("withdraw", words) == exit_done);
    CHECK(job.tell({"check", job.file(), "--now", monday}) == exit_done);
    if (first) CHECK(job.others(monday) == all_well);
    CHECK(job.log("show", {"--now", monday}) == exit_done);
    CHECK(job.said.find("left out") == std::string::npos);
    CHECK(job.said.find("swept") != std::string::npos);
  }
}

TEST_CASE("a line that no longer fits the job is left out, told, and can be withdrawn") {
  const std::vector<std::string> lines{
      R"({"id":1,"written_at":"2027-04-05T12:00Z","kind":"coat","step":"gone/steps/coat-1/show/coat"})",
      R"({"id":1,"written_at":"2027-04-05T12:00Z","kind":"tin","coating":"gone","tin":"bought","amount_l":1})",
      R"({"id":1,"written_at":"2027-04-05T12:00Z","kind":"air","at":"2031-01-01T12:00Z","temperature_c":9})"};
  StarterJob job;
  for (const std::string& line : lines) {
    CAPTURE(line);
    job.put(line + "\n");
    CHECK(job.others(monday) == all_well);
    CHECK(job.tell({"plan", job.file(), "--now", monday}) == exit_done);
    CHECK(job.said.find(".log.jsonl:1: ") != std::string::npos);
    CHECK(job.said.find("tackfree log withdraw " + job.file() + " 1") != std::string::npos);
    CHECK(job.tell({"check", job.file(), "--now", monday}) == exit_wrong_input);
    CHECK(job.log("withdraw", {"1", "--now", monday}) == exit_done);
    CHECK(job.tell({"check", job.file(), "--now", monday}) == exit_done);
  }
}

TEST_CASE("a log whose last number is the highest there is takes more lines") {
  StarterJob job;
  job.put(R"({"id":1000000000,"written_at":"2027-04-05T12:00Z","kind":"note","note":"a"})"
          "\n");
  CHECK(job.log("note", {"b", "--now", monday}) == exit_done);
  CHECK(job.tell({"check", job.file(), "--now", monday}) == exit_done);
  CHECK(job.log("withdraw", {"1000000000", "--now", monday}) == exit_done);
  CHECK(job.others(monday) == all_well);
}

TEST_CASE("a line that would push others out of the log is refused") {
  StarterJob job;
  CHECK(job.log("note", {"a", "--at", "2027-04-05T17:00", "--now", monday}) == exit_done);
  CHECK(job.log("coat", {"--batch", "top", "--insist", "--at", "2027-04-05T17:00", "--now",
                         monday}) == exit_done);
  CHECK(job.log("coat", {"--batch", "top", "--insist", "--at", "2027-04-05T17:30", "--now",
                         monday}) == exit_done);
  const std::string before = job.text();
  // The first coat later than the second.
  CHECK(job.log("coat", {"--batch", "top", "--corrects", "2", "--insist", "--at",
                         "2027-04-05T17:40", "--now", monday}) == exit_wrong_input);
  CHECK(job.text() == before);
  // As of an hour at which the log had nothing yet.
  CHECK(job.log("coat", {"--batch", "top", "--insist", "--now", "2027-04-05T16:00"}) ==
        exit_wrong_input);
  CHECK(job.text() == before);
}

TEST_CASE("of coats that are logged at once none is written twice") {
  StarterJob job;
  for (int race = 0; race < 3; ++race) {
    job.put("");
    std::vector<std::thread> racers;
    for (int i = 0; i < 3; ++i)
      racers.emplace_back([&] {
        std::ostringstream out, err;
        tackfree::run({"log", "coat", job.file(), "--batch", "top", "--insist", "--now", monday},
                      out, err);
      });
    for (std::thread& racer : racers) racer.join();
    std::istringstream log(job.text());
    std::set<std::string> steps;
    for (std::string line; std::getline(log, line);)
      CHECK(steps
                .insert(line.substr(line.find("\"step\""),
                                    line.find("coat\",") - line.find("\"step\"")))
                .second);
    CHECK_FALSE(steps.empty());
  }
}

TEST_CASE("a log that is no file is one mistake") {
  StarterJob job;
  std::string text = StarterJob::bytes(job.file());
  text.insert(text.find('{') + 1, "\"log_file\": \"/dev/null\",");
  std::ofstream(job.file(), std::ios::binary) << text;
  CHECK(job.log("note", {"a"}) == exit_wrong_input);
  CHECK(job.said.find("1 mistake found") != std::string::npos);
}

TEST_CASE("an answer that cannot be printed does not look as if nothing had been written") {
  StarterJob job;
  std::ofstream full("/dev/full");
  std::ostringstream err;
  CHECK(tackfree::run({"log", "note", job.file(), "a"}, full, err) == exit_done);
  CHECK(err.str().find("Written as number 1 in ") != std::string::npos);
  CHECK(err.str().find("standard output") != std::string::npos);
  full.clear();
  std::ostringstream why;
  CHECK(tackfree::run({"plan", job.file()}, full, why) == exit_wrong_input);
  CHECK(why.str().find("standard output") != std::string::npos);
}

TEST_CASE("readings may have decimals") {
  StarterJob job;
  CHECK(job.log("air", {"--air-temp-c", "20.5", "--humidity-pct", "55.5"}) == exit_done);
  CHECK(job.text().find("\"temperature_c\":20.5,\"humidity_pct\":55.5") != std::string::npos);
  CHECK(job.log("air", {"--air-temp-f", "68.5"}) == exit_done);
  CHECK(job.tell({"tonight", job.file(), "--air-temp-f", "68.5"}) == exit_done);
}

TEST_CASE("a number on the command line that is no plain decimal is refused with what is right") {
  StarterJob job;
  const std::vector<std::vector<std::string>> refused{
      {"log", "coat", job.file(), "--batch", "top", "--litres", "nan"},
      {"log", "coat", job.file(), "--batch", "top", "--litres", "0x1p-2"},
      {"log", "coat", job.file(), "--batch", "top", "--coat", "0x1"},
      {"log", "coat", job.file(), "--batch", "top", "--used", "nan l"},
      {"log", "coat", job.file(), "--batch", "top", "--used", "0x1 l"},
      {"log", "air", job.file(), "--air-temp-c", "0x14"},
      {"log", "air", job.file(), "--air-temp-f", "inf"},
      {"log", "air", job.file(), "--air-temp-c", "14", "--humidity-pct", "nan"},
      {"log", "withdraw", job.file(), "0x1"},
      {"log", "note", job.file(), "a", "--corrects", "0x1"},
      {"plan", job.file(), "--width", "0x50"}};
  CHECK(job.log("note", {"a"}) == exit_done);
  const std::string before = job.text();
  for (const auto& words : refused) {
    CAPTURE(words.back());
    CHECK(job.tell(words) == exit_wrong_input);
    CHECK(job.said.find("found \"" + words.back() + "\"") != std::string::npos);
    CHECK(job.said.find("wanted a ") != std::string::npos);
    CHECK(job.text() == before);
  }
}

TEST_CASE("all that is to be bought is bought in one line, and the list is empty then") {
  StarterJob job;
  const std::string now = "2027-04-05T17:00";
  CHECK(job.tell({"buy", job.file(), "--now", now}) == exit_done);
  const auto buys = [&] {
    CHECK(job.tell({"plan", job.file(), "--now", now, "--keep", "no"}) == exit_done);
    return job.said.find("Buy   nothing") == std::string::npos;
  };
  CHECK(buys());
  CHECK(job.log("bought-all", {"--now", now}) == exit_done);
  CAPTURE(job.said);
  CHECK(job.said.find("Understood: bought: ") != std::string::npos);
  CHECK_FALSE(buys());
  CHECK(job.log("bought-all", {"--now", now}) == exit_wrong_input);
  CHECK(job.log("withdraw", {"1", "--now", now}) == exit_done);
  CHECK(buys());
}

TEST_CASE("an evening away is worked around, and comes back when the line is withdrawn") {
  StarterJob job;
  const auto tonight = [&] {
    CHECK(job.tell({"tonight", job.file(), "--now", "2027-04-06T17:30"}) == exit_done);
    return job.said;
  };
  const std::string before = tonight();
  CHECK(job.log("away", {"--now", "2027-04-06T17:30"}) == exit_done);
  CHECK(job.said.find("Understood: away Tue 6 Apr, all day") != std::string::npos);
  const std::string without = tonight();
  CAPTURE(before);
  CAPTURE(without);
  CHECK(before != without);
  CHECK(without.find("nothing tonight") != std::string::npos);
  CHECK(job.log("withdraw", {"1", "--now", "2027-04-06T17:30"}) == exit_done);
  CHECK(tonight() == before);
  CHECK(job.log("away", {"--on", "someday"}) == exit_wrong_input);
  CHECK(job.log("free", {"--from", "20:00"}) == exit_wrong_input);
}

}  // namespace
}  // namespace tackfree
