#include "tackfree/cli/run.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

#include <doctest/doctest.h>
#include <unistd.h>

namespace tackfree {
namespace {

namespace fs = std::filesystem;

struct Folder {
  fs::path path = fs::temp_directory_path() / ("tackfree_run_" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  ~Folder() { fs::remove_all(path); }
};

struct Said {
  int code;
  std::string out, err;
};

Said said(const std::vector<std::string>& arguments) {
  std::ostringstream out, err;
  const int code = run(arguments, out, err);
  return {code, out.str(), err.str()};
}

std::string text_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

fs::path job_in(const fs::path& folder) {
  for (const auto& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == ".json") return entry.path();
  return {};
}

/// The demo in a copy: a plan is kept beside its job.
std::string demo_in(const fs::path& folder) {
  fs::copy(TACKFREE_ROOT "/data/demo/hall_bench", folder / "demo");
  return (folder / "demo" / "hall_bench.json").string();
}

TEST_CASE("choices between dates and sessions come as a table and as JSON") {
  const Folder folder;
  const std::string home = (folder.path / "choosing").string();
  CHECK(said({"start", home}).code == exit_done);
  const fs::path json = folder.path / "choices.json";
  const Said told = said({"choices", job_in(home).string(), "--json", json.string()});
  CHECK(told.code == exit_done);
  CHECK(told.out.find("SOONER, OR IN FEWER SESSIONS") != std::string::npos);
  CHECK(text_of(json).find("\"tackfree_choices\": 1") != std::string::npos);
  CHECK(said({"choices", (folder.path / "none.json").string()}).code == exit_wrong_input);
}

TEST_CASE(
    "the starter job is written once, has no mistakes, and its areas and plan come as it stands") {
  const Folder folder;
  const std::string home = (folder.path / "mine").string();
  CHECK(said({"start", home}).code == exit_done);
  const fs::path job = job_in(home);
  REQUIRE_FALSE(job.empty());
  const Said checked = said({"check", job.string()});
  CHECK(checked.code == exit_done);
  CHECK(checked.err.empty());
  CHECK(said({"plan", job.string()}).code == exit_done);
  const fs::path json = folder.path / "area.json";
  const Said area = said({"area", job.string(), "--json", json.string()});
  CHECK(area.code == exit_done);
  CHECK(area.out.find("AREAS TO COAT") != std::string::npos);
  CHECK(text_of(json).find("\"tackfree_area\": 1") != std::string::npos);
  const std::string before = text_of(job);
  const Said again = said({"start", home});
  CHECK(again.code == exit_wrong_input);
  CHECK(again.err.find("nothing is overwritten") != std::string::npos);
  CHECK(text_of(job) == before);
}

TEST_CASE("the same job gives the same bytes in all three outputs") {
  const Folder folder;
  const std::string home = (folder.path / "mine").string();
  REQUIRE(said({"start", home}).code == exit_done);
  const std::string job = job_in(home).string();
  auto planned = [&](const std::string& name) {
    const Said s = said({"plan", job, "--now", "2027-04-05T17:45Z", "--json",
                         (folder.path / (name + ".json")).string(), "--calendar",
                         (folder.path / (name + ".ics")).string()});
    CHECK(s.code == exit_done);
    return s.out;
  };
  CHECK(planned("a") == planned("b"));
  CHECK(text_of(folder.path / "a.json") == text_of(folder.path / "b.json"));
  CHECK(text_of(folder.path / "a.ics") == text_of(folder.path / "b.ics"));
  CHECK(text_of(folder.path / "a.ics").starts_with("BEGIN:VCALENDAR\r\n"));
}

TEST_CASE("buy prints the plan's own shopping part, and exits as plan does") {
  const Folder folder;
  const std::string job = demo_in(folder.path);
  const fs::path list = folder.path / "buy.json", whole = folder.path / "plan.json";
  const Said bought = said({"buy", job, "--json", list.string()});
  const Said planned = said({"plan", job, "--json", whole.string()});
  CHECK(bought.code == exit_done);
  CHECK(planned.code == exit_done);
  const std::string text = text_of(list);
  CHECK(text.starts_with("{\n  \"tackfree_buy\": 1,"));
  const auto shopping = [](const std::string& json) {
    const std::size_t from = json.find("\n  \"shopping\": {");
    return json.substr(from, json.find("\n  }", from) - from);
  };
  CHECK(shopping(text).size() > 500);
  CHECK(shopping(text) == shopping(text_of(whole)));
  CHECK(said({"buy", "no_such_job.json"}).code == exit_wrong_input);
  const std::string frozen = TACKFREE_ROOT "/tests/transcripts/jobs/frozen.json";
  CHECK(said({"buy", frozen}).code == exit_not_plannable);
  CHECK(said({"buy", frozen}).out.find("some steps found no time") != std::string::npos);
}

TEST_CASE("an output that cannot be written is a mistake, and the plan is printed all the same") {
  const Folder folder;
  const std::string home = (folder.path / "mine").string();
  REQUIRE(said({"start", home}).code == exit_done);
  const Said s =
      said({"plan", job_in(home).string(), "--json", (folder.path / "no" / "plan.json").string()});
  CHECK(s.code == exit_wrong_input);
  CHECK(s.err.find("cannot be written") != std::string::npos);
  CHECK(s.out.size() > 1000);
}

TEST_CASE("no control character of a job file reaches the terminal, in a plan or in a mistake") {
  const Folder folder;
  const std::string home = (folder.path / "mine").string();
  REQUIRE(said({"start", home}).code == exit_done);
  const fs::path job = job_in(home);
  const std::string text = text_of(job);
  const auto check_plain = [&](const std::string& changed, int code) {
    std::ofstream(job, std::ios::binary) << changed;
    const Said s = said({"plan", job.string(), "--now", "2027-04-05T17:45Z"});
    CHECK(s.code == code);
    for (const std::string& said_to : {s.out, s.err}) {
      for (const char c : said_to) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
      CHECK(said_to.find("\xC2\x9B") == std::string::npos);
      CHECK(said_to.find("\xE2\x80\xAE") == std::string::npos);
    }
  };
  const std::string steering = "\\u001b[2J\\u009b31m\\u202e\\u0007";
  const std::size_t name = text.find("\"name\": \"") + 9;
  check_plain(std::string(text).insert(name, steering), exit_done);
  check_plain(std::string(text).insert(text.find('{') + 1, "\"" + steering + "\": 1,"),
              exit_wrong_input);
}

TEST_CASE("colour is for terminals, and what is printed is as wide as asked") {
  const std::string job = TACKFREE_ROOT "/data/demo/hall_bench/hall_bench.json";
  std::ostringstream plain, coloured, err;
  CHECK(run({"area", job}, plain, err) == exit_done);
  CHECK(run({"area", job}, coloured, err, {.columns = 120, .coloured = true}) == exit_done);
  CHECK(plain.str().find('\x1b') == std::string::npos);
  CHECK(coloured.str().find("\x1b[1") != std::string::npos);
  CHECK(plain.str().find("show side") == std::string::npos);
  CHECK(coloured.str().find("show side") != std::string::npos);
  CHECK(said({"area", job, "--width", "120"}).out.find("show side") != std::string::npos);
}

TEST_CASE("page, tables and calendars are written where they were asked for") {
  const Folder folder;
  const auto in = [&](const char* name) { return (folder.path / name).string(); };
  const std::string job = demo_in(folder.path);
  CHECK(said({"plan", job, "--page", in("plan.html"), "--csv", in("tables"), "--work-calendar",
              in("work.ics"), "--waits-calendar", in("waits.ics")})
            .code == exit_done);
  CHECK(text_of(in("plan.html")).starts_with("<!DOCTYPE html>"));
  CHECK(text_of(folder.path / "tables" / "steps.csv").starts_with("begin_local,"));
  CHECK(text_of(folder.path / "tables" / "areas.csv").starts_with("part,"));
  CHECK(text_of(folder.path / "tables" / "shopping.csv").starts_with("what,"));
  CHECK(text_of(in("work.ics")).find("CATEGORIES:coating") != std::string::npos);
  CHECK(text_of(in("work.ics")).find("CATEGORIES:milestone") == std::string::npos);
  CHECK(text_of(in("waits.ics")).find("CATEGORIES:milestone") != std::string::npos);
}

TEST_CASE("a data folder in place of the built-in data must be whole") {
  const Folder folder;
  const std::string home = (folder.path / "mine").string();
  REQUIRE(said({"start", home}).code == exit_done);
  CHECK(said({"check", job_in(home).string(), "--data", TACKFREE_ROOT "/data"}).code == exit_done);
  const Said missing = said({"check", job_in(home).string(), "--data", folder.path.string()});
  CHECK(missing.code == exit_wrong_input);
  CHECK(missing.err.find("coatings.json") != std::string::npos);
}

}  // namespace
}  // namespace tackfree
