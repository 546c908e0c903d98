// Whole jobs: three invented jobs lived through hour by hour at the bench. Each folder of
// whole_jobs holds a job and `play`: the hours at which `tonight` is asked, what is logged when,
// and which words must stand, or must not, on the screen from when until when.
#include "tackfree/base/time.hpp"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

#include "effort.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>
#include <sys/wait.h>

namespace tackfree {
namespace {

namespace fs = std::filesystem;

const fs::path jobs_folder = fs::path(TACKFREE_ROOT) / "tests" / "transcripts" / "whole_jobs";

struct Said {
  std::string text;  ///< every run of white space as one blank
  int exit_code = 0;
};

Said program(const fs::path& place, const std::string& arguments) {
  const std::string line =
      "cd '" + place.string() + "' && '" TACKFREE_PROGRAM "' " + arguments + " --width 80 2>&1";
  FILE* pipe = ::popen(line.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string printed;
  std::array<char, 4096> piece{};
  while (const std::size_t count = std::fread(piece.data(), 1, piece.size(), pipe))
    printed.append(piece.data(), count);
  const int status = ::pclose(pipe);
  REQUIRE(WIFEXITED(status));
  Said said{{}, WEXITSTATUS(status)};
  std::istringstream words(printed);
  for (std::string word; words >> word;) said.text += (said.text.empty() ? "" : " ") + word;
  return said;
}

/// What must, or must not, be said at every hour asked within `time`.
struct Rule {
  bool must = true;
  Instant from, to;
  std::string words;
  int asked = 0;
  bool broken = false;  ///< told once, at the first hour
};

struct Logged {
  Instant at;
  std::string when, arguments;
};

struct Play {
  std::string job;
  Instant from, to;
  int first_hour = 0, last_hour = 23;  ///< of the UTC day, both asked
  std::vector<Logged> log;             ///< in order of time
  std::vector<Rule> rules;
};

Instant time_of(const std::string& text) {
  const auto at = parse_instant(text + ":00Z");
  REQUIRE_MESSAGE(at, text);
  return *at;
}

/// Times of a play are UTC, as are the zones of its jobs.
Play play_of(const fs::path& path) {
  std::ifstream file(path);
  REQUIRE(file.is_open());
  Play play;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.starts_with('#')) continue;
    std::istringstream words(line);
    std::string kind, first, second, rest;
    words >> kind >> first;
    if (kind == "job") play.job = first;
    if (kind == "hours") {
      words >> second >> play.first_hour >> play.last_hour;
      play.from = time_of(first);
      play.to = time_of(second);
    }
    if (kind == "log") {
      std::getline(words >> std::ws, rest);
      play.log.push_back({time_of(first), first, rest});
    }
    if (kind == "says" || kind == "never") {
      words >> second;
      std::getline(words >> std::ws, rest);
      play.rules.push_back({kind == "says", time_of(first), time_of(second), rest});
    }
  }
  return play;
}

std::string clock_of(Instant at) { return iso_utc(at).substr(0, 16) + "Z"; }

/// The first thing that the plan of this hour has still to be done begins no later than what
/// `tonight` offers now.
void check_offer(const fs::path& place, const Play& play, Instant now, const Said& tonight) {
  if (tonight.text.find("Do now:") == std::string::npos) return;
  const Said plan = program(
      place, "plan " + play.job + " --keep no --now " + clock_of(now) + " --json plan.json");
  REQUIRE_MESSAGE((plan.exit_code == 0 || plan.exit_code == 3), plan.text);
  std::ifstream file(place / "plan.json");
  const auto document = nlohmann::json::parse(file);
  Instant first = Instant::max();
  const auto begins = [&](const nlohmann::json& piece) {
    const auto begin = parse_instant(piece.at("begin_at").get<std::string>());
    const auto end = parse_instant(piece.at("end_at").get<std::string>());
    REQUIRE(begin);
    REQUIRE(end);
    if (*end > now) first = std::min(first, *begin);
  };
  for (const auto& step : document.at("steps"))
    if (!step.contains("done") || step.at("done").is_null())
      for (const auto& piece : step.at("pieces")) begins(piece);
  for (const auto& session : document.at("sessions")) begins(session.at("set_up"));
  CHECK_MESSAGE(first <= now + Minutes(5), "offered now, planned later: ", tonight.text);
}

void live(const std::string& name) {
  std::string copy = (fs::temp_directory_path() / "tackfree_play_XXXXXX").string();
  REQUIRE(::mkdtemp(copy.data()) != nullptr);
  fs::copy(jobs_folder / name, copy, fs::copy_options::recursive);
  Play play = play_of(jobs_folder / name / "play");
  std::size_t logged = 0;
  // The sanitized program takes ten times as long: it is asked at every fifth hour.
  const Minutes every = testing::sanitized ? 5 * one_hour : Minutes(one_hour);
  for (Instant now = play.from; now <= play.to; now += every) {
    const auto hour = static_cast<int>((now.time_since_epoch() % one_day) / one_hour);
    if (hour < play.first_hour || hour > play.last_hour) continue;
    for (; logged < play.log.size() && play.log[logged].at <= now; ++logged) {
      const Logged& line = play.log[logged];
      const std::size_t kind = line.arguments.find(' ');
      const Said said =
          program(copy, "log " + line.arguments.substr(0, kind) + " " + play.job +
                            (kind == std::string::npos ? "" : line.arguments.substr(kind)) +
                            " --now " + line.when + "Z");
      REQUIRE_MESSAGE(said.exit_code == 0, line.when, " ", line.arguments, ": ", said.text);
    }
    const Said said = program(copy, "tonight " + play.job + " --now " + clock_of(now));
    CAPTURE(clock_of(now));
    CAPTURE(said.text);
    REQUIRE((said.exit_code == 0 || said.exit_code == 3));
    for (Rule& rule : play.rules) {
      if (now < rule.from || now > rule.to) continue;
      ++rule.asked;
      const std::string wanted = (rule.must ? "must say: " : "must not say: ") + rule.words;
      const bool kept = (said.text.find(rule.words) != std::string::npos) == rule.must;
      if (!rule.broken) CHECK_MESSAGE(kept, wanted);
      rule.broken = rule.broken || !kept;
    }
    if (!testing::sanitized) check_offer(copy, play, now, said);
  }
  CHECK((testing::sanitized || logged == play.log.size()));
  for (const Rule& rule : play.rules)
    CHECK_MESSAGE((testing::sanitized || rule.asked > 0), "never asked: ", rule.words);
  fs::remove_all(copy);
}

}  // namespace

TEST_CASE("oil varnish in a cold garage, with an evening that slips and a run") {
  live("oil_garage");
}

TEST_CASE("stain, barrier and waterborne, each waited for as long as the next one needs") {
  live("stain_barrier");
}

TEST_CASE("a two-part finish sprayed by two people") { live("two_part_shop"); }

}  // namespace tackfree
