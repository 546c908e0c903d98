#include "tackfree/cli/kept_plan.hpp"

#include "tackfree/base/text_file.hpp"
#include "tackfree/cli/run.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>

#include <doctest/doctest.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tackfree {
namespace {

namespace fs = std::filesystem;

/// The starter job in a folder of its own, planned at times of its first days.
class KeepingJob {
 public:
  explicit KeepingJob(const std::string& stem = "job") {
    fs::remove_all(folder_);
    tell({"start", folder_.string()});
    job_ = folder_ / (stem + ".json");
    if (stem != "job") fs::rename(folder_ / "job.json", job_);
  }
  KeepingJob(const KeepingJob&) = delete;
  KeepingJob& operator=(const KeepingJob&) = delete;
  ~KeepingJob() { fs::remove_all(folder_); }

  int tell(const std::vector<std::string>& arguments) {
    std::ostringstream out_to, err_to;
    const int code = run(arguments, out_to, err_to);
    out = out_to.str();
    err = err_to.str();
    return code;
  }
  int plan(const char* now, const std::vector<std::string>& more = {}) {
    std::vector<std::string> all{"plan", job_.string(), "--now", now};
    all.insert(all.end(), more.begin(), more.end());
    return tell(all);
  }
  /// Leaves out the first coat of the top.
  void skip(const char* now) {
    CHECK(tell({"log", "skip", file(), "--batch", "top", "--now", now}) == exit_done);
  }

  std::string file() const { return job_.string(); }
  fs::path kept() const { return kept_plan_path(job_); }
  std::string in(const char* name) const { return (folder_ / name).string(); }
  static std::string bytes(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  bool says(std::string_view what) const { return (out + err).find(what) != std::string::npos; }
  std::string out, err;

 private:
  fs::path folder_ = fs::temp_directory_path() / ("tackfree_kept_" + std::to_string(::getpid()));
  fs::path job_;
};

constexpr const char* first_evening = "2027-04-05T17:45Z";
constexpr const char* second_evening = "2027-04-06T17:45Z";

}  // namespace

TEST_CASE("a plan is kept beside the job, and the next one goes on from it without an option") {
  KeepingJob job;
  CHECK(kept_plan_path("bench.json") == "bench.kept.json");
  CHECK(job.plan(first_evening, {"--calendar", job.in("first.ics")}) == exit_done);
  CHECK_FALSE(job.says("Since the plan of"));
  REQUIRE(fs::exists(job.kept()));
  CHECK(KeepingJob::bytes(job.kept()).starts_with("{\n  \"tackfree_kept_plan\": 1,\n"));
  job.skip(second_evening);
  CHECK(job.plan(second_evening, {"--calendar", job.in("second.ics")}) == exit_done);
  CHECK(job.says("Since the plan of"));
  CHECK(KeepingJob::bytes(job.in("first.ics")).find("SEQUENCE:1") == std::string::npos);
  CHECK(KeepingJob::bytes(job.in("second.ics")).find("SEQUENCE:1") != std::string::npos);
  CHECK(job.err.empty());
}

TEST_CASE("the plan that is named goes before the kept one") {
  KeepingJob job;
  CHECK(job.plan(first_evening, {"--json", job.in("first.json")}) == exit_done);
  CHECK(job.plan(second_evening) == exit_done);
  CHECK(job.plan("2027-04-07T17:45Z", {"--last-plan", job.in("first.json")}) == exit_done);
  CHECK(job.says("Since the plan of Mon"));
  CHECK(job.plan("2027-04-07T17:50Z") == exit_done);
  CHECK(job.says("Since the plan of Wed"));
}

TEST_CASE("the same command given twice prints and keeps the same bytes") {
  KeepingJob job;
  CHECK(job.plan(first_evening) == exit_done);
  job.skip(second_evening);
  std::vector<std::string> told;
  for (int time = 0; time < 3; ++time) {
    CHECK(job.plan(second_evening, {"--json", job.in("plan.json"), "--calendar", job.in("plan.ics"),
                                    "--page", job.in("plan.html")}) == exit_done);
    std::string all = job.out + job.err;
    for (const char* name : {"plan.json", "plan.ics", "plan.html", "job.kept.json"})
      all += KeepingJob::bytes(job.in(name));
    told.push_back(std::move(all));
  }
  CHECK(told[0].find("Since the plan of Mon") != std::string::npos);
  CHECK(told[1] == told[0]);
  CHECK(told[2] == told[0]);
}

TEST_CASE("a file of that name that is not ours, or of another job, is told and left alone") {
  KeepingJob job;
  CHECK(job.plan(first_evening) == exit_done);
  const std::string ours = KeepingJob::bytes(job.kept());
  const std::string mark = "\"id\": \"";
  std::string foreign = ours;
  for (std::size_t at = foreign.find(mark); at != std::string::npos;
       at = foreign.find(mark, at + 1))
    foreign.insert(at + mark.size(), "x-");
  const std::string newer = std::regex_replace(ours, std::regex("\"tackfree_kept_plan\": 1"),
                                               "\"tackfree_kept_plan\": 2");
  for (const std::string& text : {std::string(), std::string("my notes\n"), std::string("{}\n"),
                                  ours.substr(0, ours.size() / 2), foreign, newer}) {
    CAPTURE(text.substr(0, 40));
    std::ofstream(job.kept(), std::ios::binary) << text;
    CHECK(job.plan(second_evening) == exit_done);
    CHECK_FALSE(job.says("Since the plan of"));
    CHECK(std::count(job.err.begin(), job.err.end(), '\n') == 1);
    CHECK(job.says("no plan is kept until you move it away"));
    CHECK(job.tell({"tonight", job.file(), "--now", second_evening}) == exit_done);
    CHECK(std::count(job.err.begin(), job.err.end(), '\n') == 1);
    CHECK(KeepingJob::bytes(job.kept()) == text);
  }
}

TEST_CASE("a folder, a pipe and a link to nowhere in place of the kept plan stay as they are") {
  KeepingJob job;
  const auto left_alone = [&] {
    CHECK(job.plan(first_evening) == exit_done);
    CHECK(std::count(job.err.begin(), job.err.end(), '\n') == 1);
    CHECK(job.says("job.kept.json"));
  };
  fs::create_directory(job.kept());
  left_alone();
  CHECK(fs::is_directory(job.kept()));
  fs::remove(job.kept());
  fs::create_symlink("nowhere.json", job.kept());
  left_alone();
  CHECK_FALSE(fs::exists(job.in("nowhere.json")));
  fs::remove(job.kept());
  REQUIRE(::mkfifo(job.kept().c_str(), 0600) == 0);
  left_alone();
  CHECK(fs::is_fifo(job.kept()));
}

TEST_CASE("a file of the job under that name is not taken for a kept plan") {
  KeepingJob job;
  std::string text = KeepingJob::bytes(job.file());
  text.insert(text.find('{') + 1, "\"log_file\": \"job.kept.json\",");
  std::ofstream(job.file(), std::ios::binary) << text;
  CHECK(job.tell({"log", "note", job.file(), "swept", "--now", first_evening}) == exit_done);
  const std::string log = KeepingJob::bytes(job.kept());
  CHECK(job.plan(first_evening) == exit_done);
  CHECK(job.says("is a file of the job itself"));
  CHECK(KeepingJob::bytes(job.kept()) == log);
  // The log that is not there yet is one too.
  fs::remove(job.kept());
  CHECK(job.plan(first_evening) == exit_done);
  CHECK_FALSE(fs::exists(job.kept()));
}

TEST_CASE("where nothing can be written the plan is printed all the same, and a line says why") {
  // The name is just short enough for the file, and too long for the one that is renamed to it. A
  // folder without rights would not stop everybody who runs this.
  KeepingJob job(std::string(243, 'a'));
  CHECK(job.plan(first_evening) == exit_done);
  CHECK(job.out.size() > 1000);
  CHECK(std::count(job.err.begin(), job.err.end(), '\n') == 1);
  CHECK(job.says("This plan is not kept"));
  CHECK_FALSE(fs::exists(job.kept()));
}

TEST_CASE("only plan keeps one, and not where it is asked for other airing or not to") {
  KeepingJob job;
  const std::string file = job.file();
  for (const std::vector<std::string>& command :
       std::vector<std::vector<std::string>>{{"plan", file, "--airing", "proposed"},
                                             {"plan", file, "--keep", "no"},
                                             {"buy", file},
                                             {"choices", file},
                                             {"area", file},
                                             {"check", file},
                                             {"tonight", file}}) {
    CAPTURE(command[0]);
    CHECK(job.tell(command) == exit_done);
    CHECK_FALSE(fs::exists(job.kept()));
  }
  CHECK(job.plan(first_evening) == exit_done);
  const std::string kept = KeepingJob::bytes(job.kept());
  CHECK(job.plan(second_evening, {"--airing", "proposed"}) == exit_done);
  CHECK(job.says("Since the plan of"));
  CHECK(job.plan(second_evening, {"--keep", "no"}) == exit_done);
  CHECK(job.says("Since the plan of"));
  CHECK(job.tell({"buy", file, "--now", second_evening}) == exit_done);
  CHECK(KeepingJob::bytes(job.kept()) == kept);
  CHECK(job.tell({"plan", file, "--keep", "perhaps"}) == exit_wrong_input);
}

TEST_CASE("no output may go where the plan is kept, whatever it is called") {
  KeepingJob job;
  for (const bool is_there : {false, true}) {
    CAPTURE(is_there);
    if (is_there) CHECK(job.plan(first_evening) == exit_done);
    const std::string kept = KeepingJob::bytes(job.kept());
    CHECK(job.plan(second_evening, {"--json", job.kept().string()}) == exit_wrong_input);
    CHECK(job.says("where the plan is kept"));
    CHECK(job.tell({"area", job.file(), "--json", job.in("./job.kept.json")}) == exit_wrong_input);
    CHECK(KeepingJob::bytes(job.kept()) == kept);
  }
}

TEST_CASE("no file that the README or the manual has written is where a plan is kept") {
  std::size_t outputs = 0;
  for (const char* page : {"/README.md", "/docs/manual.md"}) {
    const std::string text = KeepingJob::bytes(std::string(TACKFREE_ROOT) + page);
    const std::regex option("--(?:json|calendar|page|csv) ([^ `\n]+)");
    for (auto at = std::sregex_iterator(text.begin(), text.end(), option);
         at != std::sregex_iterator(); ++at, ++outputs)
      CHECK_FALSE((*at)[1].str().ends_with(".kept.json"));
  }
  CHECK(outputs > 5);
}

TEST_CASE("the demo is planned in the build folder, so that nothing is kept in data") {
  const std::string build = KeepingJob::bytes(TACKFREE_ROOT "/CMakeLists.txt");
  CHECK(build.find("set(demo_dir ${CMAKE_BINARY_DIR}/demo)") != std::string::npos);
  CHECK(build.find("COMMAND tackfree plan ${demo_dir}/hall_bench.json") != std::string::npos);
  for (const auto& entry : fs::recursive_directory_iterator(TACKFREE_ROOT "/data"))
    CHECK_FALSE(entry.path().string().ends_with(".kept.json"));
}

}  // namespace tackfree
