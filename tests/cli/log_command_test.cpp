#include "tackfree/cli/log_command.hpp"

#include "tackfree/cli/run.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

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
  CHECK(job.log("show", {}) == exit_done);
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
    told.push_back(job.said + "\n" + StarterJob::bytes(json) + "\n" + StarterJob::bytes(calendar));
  }
  CHECK(told[0].find("WHAT MOVED SINCE") != std::string::npos);
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

}  // namespace
}  // namespace tackfree
