#include "tackfree/cli/output_files.hpp"

#include "tackfree/cli/run.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <sstream>

#include <doctest/doctest.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tackfree {
namespace {

namespace fs = std::filesystem;

std::string octets_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

struct Answer {
  int code;
  std::string out, err;
};

/// A job that reads a file of each kind, in a folder of its own.
struct FullJob {
  fs::path folder = fs::temp_directory_path() / ("tackfree_outputs_" + std::to_string(::getpid()));
  fs::path job = folder / "job.json";
  std::map<std::string, std::string> before;

  FullJob() {
    fs::remove_all(folder);
    fs::copy(TACKFREE_ROOT "/tests/input/every_key", folder);
    fs::copy(TACKFREE_ROOT "/data", folder / "data", fs::copy_options::recursive);
    remember();
  }
  ~FullJob() { fs::remove_all(folder); }

  void remember() {
    for (const auto& entry : fs::recursive_directory_iterator(folder))
      if (entry.is_regular_file()) before[entry.path().string()] = octets_of(entry.path());
  }

  /// Is there no other file than before, and none with another text?
  bool untouched() const {
    std::size_t files = 0;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
      if (!entry.is_regular_file()) continue;
      ++files;
      const auto was = before.find(entry.path().string());
      if (was == before.end() || was->second != octets_of(entry.path())) return false;
    }
    return files == before.size();
  }

  std::string in(const std::string& name) const { return (folder / name).string(); }

  static Answer answer(const std::vector<std::string>& arguments,
                       const std::optional<FileIdentity>& printed_to = {}) {
    std::ostringstream out, err;
    const int code = run(arguments, out, err, {.printed_to = printed_to});
    return {code, out.str(), err.str()};
  }

  /// `plan` with these options, as it is refused.
  std::string refusal(std::vector<std::string> options) const {
    options.insert(options.begin(), {"plan", job.string()});
    const Answer said = answer(options);
    CHECK(said.code == exit_wrong_input);
    CHECK(said.out.empty());
    CHECK(untouched());
    return said.err;
  }
};

bool tells(const std::string& text, const std::string& piece) {
  return text.find(piece) != std::string::npos;
}

}  // namespace

TEST_CASE("no output replaces a file that the job is read from, under whatever name") {
  const FullJob full;
  CHECK(tells(full.refusal({"--json", full.in("job.json")}), "--json: found"));
  CHECK(tells(full.refusal({"--json", full.in("job.json")}), "the job file"));
  CHECK(tells(full.refusal({"--calendar", full.in("parts.csv")}), "the parts list"));
  CHECK(tells(full.refusal({"--page", full.in("what_was_done.jsonl")}), "the log"));
  CHECK(tells(full.refusal({"--calendar", full.in("busy.ics")}), "a busy calendar"));
  CHECK(tells(full.refusal({"--page", full.in("./hours.csv")}), "a file of air"));
  CHECK(tells(full.refusal({"--json", full.in("year.epw")}), "a weather file"));
  CHECK(tells(full.refusal({"--data", full.in("data"), "--json", full.in("data/how.json")}),
              "finishing data"));
}

TEST_CASE("links, folders of tables and files that are not there yet are known for what they are") {
  FullJob full;
  fs::create_symlink("job.json", full.folder / "soft.json");
  fs::create_hard_link(full.job, full.folder / "hard.json");
  fs::create_directory_symlink(full.folder, full.folder / "round");
  full.remember();
  CHECK(tells(full.refusal({"--json", full.in("soft.json")}), "the job file"));
  CHECK(tells(full.refusal({"--json", full.in("hard.json")}), "the job file"));
  CHECK(tells(full.refusal({"--json", full.in("round/parts.csv")}), "the parts list"));
  CHECK(tells(full.refusal({"--json", full.in("new"), "--page", full.in("round/new")}),
              "--json goes there"));
  CHECK(tells(full.refusal({"--csv", full.in("new"), "--page", full.in("new/areas.csv")}),
              "--page goes there"));
  CHECK_FALSE(fs::exists(full.folder / "new"));
  fs::create_hard_link(full.folder / "parts.csv", full.folder / "steps.csv");
  full.remember();
  CHECK(tells(full.refusal({"--csv", full.folder.string()}), "the parts list"));
  // The log of a job that has none yet is a file too.
  fs::remove(full.folder / "what_was_done.jsonl");
  full.before.clear();
  full.remember();
  CHECK(tells(full.refusal({"--json", full.in("what_was_done.jsonl")}), "the log"));
  // All are told in one run.
  const std::string all = full.refusal(
      {"--json", full.in("a"), "--calendar", full.in("a"), "--page", full.in("a"), "--csv", "-"});
  CHECK(tells(all, "3 mistakes found"));
}

TEST_CASE("what is printed does not go into a file that is read or written") {
  const FullJob full;
  const Answer said =
      FullJob::answer({"check", full.job.string()}, identity_of(full.folder / "parts.csv"));
  CHECK(said.code == exit_wrong_input);
  CHECK(tells(said.err, "standard output: wanted another file: this is the parts list"));
  const std::string starter = full.in("mine");
  REQUIRE(FullJob::answer({"start", starter}).code == exit_done);
  std::ofstream(full.folder / "out.json").close();
  const Answer both =
      FullJob::answer({"area", starter + "/job.json", "--json", full.in("out.json")},
                      identity_of(full.folder / "out.json"));
  CHECK(both.code == exit_wrong_input);
  CHECK(tells(both.err, "--json: found"));
}

TEST_CASE("a file asked for as - is printed alone, and only one can be") {
  const FullJob full;
  const std::string starter = full.in("mine");
  REQUIRE(FullJob::answer({"start", starter}).code == exit_done);
  const std::string job = starter + "/job.json";
  for (const char* command : {"plan", "area", "buy", "choices"}) {
    CAPTURE(command);
    const Answer said = FullJob::answer({command, job, "--json", "-"});
    CHECK(said.code == exit_done);
    CHECK(said.out.starts_with("{\n"));
    CHECK(said.out.ends_with("\n}\n"));
    CHECK_FALSE(tells(said.out, "\n\n"));
  }
  const Answer calendar = FullJob::answer({"plan", job, "--calendar", "-"});
  CHECK(calendar.out.starts_with("BEGIN:VCALENDAR\r\n"));
  CHECK(calendar.out.ends_with("END:VCALENDAR\r\n"));
  const Answer two = FullJob::answer({"plan", job, "--json", "-", "--page", "-"});
  CHECK(two.code == exit_wrong_input);
  CHECK(tells(two.err, "--json is printed already"));
}

TEST_CASE("the file of the last plan may be replaced by the new one alone") {
  const FullJob full;
  const std::string starter = full.in("mine");
  REQUIRE(FullJob::answer({"start", starter}).code == exit_done);
  const std::string job = starter + "/job.json", last = full.in("last.json");
  REQUIRE(FullJob::answer({"plan", job, "--json", last}).code == exit_done);
  CHECK(FullJob::answer({"plan", job, "--last-plan", last, "--json", last}).code == exit_done);
  const std::string text = octets_of(last);
  const Answer said = FullJob::answer({"plan", job, "--last-plan", last, "--page", last});
  CHECK(said.code == exit_wrong_input);
  CHECK(tells(said.err, "the last plan"));
  CHECK(octets_of(last) == text);
}

}  // namespace tackfree
