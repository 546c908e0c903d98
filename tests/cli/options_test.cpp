#include "tackfree/cli/options.hpp"

#include <iterator>
#include <sstream>

#include <doctest/doctest.h>

namespace tackfree {
namespace {

TEST_CASE("the plan command takes its files and its now") {
  const ReadOptions read = read_options({"plan", "job.json", "--json", "plan.json", "--calendar",
                                         "plan.ics", "--now", "2027-04-05T17:45"});
  REQUIRE(read.options);
  CHECK(read.options->command == Command::plan);
  CHECK(read.options->job_file == "job.json");
  CHECK(read.options->json_file == "plan.json");
  CHECK(read.options->calendar_file == "plan.ics");
  CHECK(read.options->now == "2027-04-05T17:45");
  CHECK_FALSE(read.options->data_dir);
}

TEST_CASE("the plan command takes a page, a folder for tables, and one person's calendar") {
  const ReadOptions read =
      read_options({"plan", "job.json", "--page", "plan.html", "--csv", "tables", "--calendar",
                    "ana.ics", "--calendar-of", "Ana"});
  REQUIRE(read.options);
  CHECK(read.options->page_file == "plan.html");
  CHECK(read.options->csv_folder == "tables");
  CHECK(read.options->calendar_file == "ana.ics");
  CHECK(read.options->calendar_of == "Ana");
  CHECK_FALSE(read.options->width);
  CHECK(read_options({"plan", "job.json", "--calendar-of", "Ana"}).mistaken);
}

TEST_CASE("an option that is gone is a mistake") {
  CHECK(read_options({"plan", "job.json", "--work-calendar", "work.ics"}).mistaken);
  CHECK(read_options({"plan", "job.json", "--waits-calendar=waits.ics"}).mistaken);
}

TEST_CASE("a part of the plan goes by its word; a wrong word is told the right ones") {
  CHECK_FALSE(read_options({"plan", "job.json"}).options->only);
  CHECK(read_options({"plan", "job.json", "--only", "vapour"}).options->only == PlanPart::vapour);
  CHECK(read_options({"plan", "job.json", "--full"}).options->full);
  const ReadOptions wrong = read_options({"plan", "job.json", "--only", "dayz"});
  CHECK(wrong.mistaken);
  CHECK(wrong.text.find("no part of a plan is called \"dayz\"; its parts are warnings, progress, "
                        "days, buy, areas, coats, air, vapour, sources; did you mean \"days\"?") !=
        std::string::npos);
  CHECK(read_options({"plan", "job.json", "--only", "days", "--full"}).mistaken);
}

TEST_CASE("a width is from 40 to 200 columns, for whatever is printed") {
  for (const char* command : {"plan", "area", "buy"})
    CHECK(read_options({command, "job.json", "--width", "120"}).options->width == 120);
  CHECK(read_options({"plan", "job.json", "--width", "39"}).mistaken);
  CHECK(read_options({"plan", "job.json", "--width", "wide"}).mistaken);
}

TEST_CASE("area takes a job and a file for JSON") {
  const ReadOptions read = read_options({"area", "job.json", "--json", "area.json"});
  REQUIRE(read.options);
  CHECK(read.options->command == Command::area);
  CHECK(read.options->job_file == "job.json");
  CHECK(read.options->json_file == "area.json");
}

TEST_CASE("the buy command takes a job, a file and a now, and no calendar") {
  const ReadOptions read =
      read_options({"buy", "job.json", "--json", "buy.json", "--now", "2027-04-05T17:45"});
  REQUIRE(read.options);
  CHECK(read.options->command == Command::buy);
  CHECK(read.options->job_file == "job.json");
  CHECK(read.options->json_file == "buy.json");
  CHECK(read.options->now == "2027-04-05T17:45");
  CHECK(read_options({"buy", "job.json", "--calendar", "plan.ics"}).mistaken);
}

TEST_CASE("the airing is the job's unless the proposed one is asked for") {
  CHECK(read_options({"plan", "job.json"}).options->airing == AiringChoice::given);
  CHECK(read_options({"plan", "job.json", "--airing", "proposed"}).options->airing ==
        AiringChoice::proposed);
  CHECK(read_options({"plan", "job.json", "--airing", "open"}).mistaken);
}

TEST_CASE("check takes a job and start a folder") {
  CHECK(read_options({"check", "job.json"}).options->command == Command::check);
  const ReadOptions start = read_options({"start", "shelf"});
  CHECK(start.options->command == Command::start);
  CHECK(start.options->folder == "shelf");
}

TEST_CASE("help has what each option takes in words, in 80 columns, and no name of the library's") {
  std::string all;
  for (const char* asked :
       {"plan",      "choices",  "buy",      "area",     "check",        "drying",    "tonight",
        "log",       "log coat", "log done", "log skip", "log test",     "log fault", "log tin",
        "log waste", "log air",  "log rags", "log note", "log withdraw", "log show",  "start"}) {
    std::istringstream words(std::string(asked) + " --help");
    all += read_options({std::istream_iterator<std::string>(words), {}}).text;
  }
  for (const char* taken : {"--airing given, proposed ", "--keep yes, no ", "--width 40 to 200 ",
                            "--json FILE ", "--humidity-pct 1 to 100 "})
    CHECK(all.find(taken) != std::string::npos);
  for (const char* inner : {"TEXT REQUIRED", "INT", "FLOAT", "ENUM", "UINT", "{", "->"})
    CHECK(all.find(inner) == std::string::npos);
  std::istringstream lines(all);
  for (std::string line; std::getline(lines, line);) CHECK(line.size() <= 80);
}

TEST_CASE("help and version are no mistakes, anything unknown is") {
  for (const std::vector<std::string>& asked :
       {std::vector<std::string>{"--help"}, {"--version"}, {"plan", "--help"}}) {
    const ReadOptions read = read_options(asked);
    CHECK_FALSE(read.options);
    CHECK_FALSE(read.mistaken);
    CHECK_FALSE(read.text.empty());
  }
  for (const std::vector<std::string>& wrong : {std::vector<std::string>{},
                                                {"plan"},
                                                {"paint", "x"},
                                                {"plan", "x", "--sooner"},
                                                {"check"},
                                                {"area"},
                                                {"area", "x", "--now", "2027-04-05"}}) {
    const ReadOptions read = read_options(wrong);
    CHECK_FALSE(read.options);
    CHECK(read.mistaken);
    CHECK_FALSE(read.text.empty());
  }
}

}  // namespace
}  // namespace tackfree
