#include "tackfree/cli/plan_command.hpp"

#include <filesystem>
#include <string>
#include <string_view>

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("the same job gives the same bytes in all three outputs") {
  const Folder folder;
  const std::string job = starter_in(folder);
  auto planned = [&](const std::string& name) {
    const Said s = said({"plan", job, "--now", "2027-04-05T17:45Z", "--json",
                         (folder.path / (name + ".json")).string(), "--calendar",
                         (folder.path / (name + ".ics")).string()});
    CHECK(s.code == exit_done);
    return s.out.substr(0, s.out.find("\nWrote "));
  };
  CHECK(planned("a") == planned("b"));
  CHECK(text_of(folder.path / "a.json") == text_of(folder.path / "b.json"));
  CHECK(text_of(folder.path / "a.ics") == text_of(folder.path / "b.ics"));
  CHECK(text_of(folder.path / "a.ics").starts_with("BEGIN:VCALENDAR\r\n"));
}

TEST_CASE("page, tables and calendar are written where they were asked for") {
  const Folder folder;
  const std::string job = demo_in(folder);
  CHECK(said({"plan", job, "--page", folder.in("plan.html"), "--csv", folder.in("tables"),
              "--calendar", folder.in("plan.ics")})
            .code == exit_done);
  CHECK(text_of(folder.in("plan.html")).starts_with("<!DOCTYPE html>"));
  CHECK(text_of(folder.path / "tables" / "steps.csv").starts_with("begin_local,"));
  CHECK(text_of(folder.path / "tables" / "areas.csv").starts_with("part,"));
  CHECK(text_of(folder.path / "tables" / "shopping.csv").starts_with("what,"));
  CHECK(text_of(folder.in("plan.ics")).find("CATEGORIES:coating") != std::string::npos);
}

// The figures are those that the calendar of the hall bench was to have: a person reads all of it.
TEST_CASE("the hall bench has under 25 entries and under 22 alarms") {
  const Folder folder;
  CHECK(said({"plan", demo_in(folder), "--calendar", folder.in("plan.ics")}).code == exit_done);
  const std::string calendar = text_of(folder.in("plan.ics"));
  const auto count = [&](std::string_view what) {
    int found = 0;
    for (std::size_t at = calendar.find(what); at != std::string::npos;
         at = calendar.find(what, at + 1))
      ++found;
    return found;
  };
  CHECK(count("BEGIN:VEVENT") < 25);
  CHECK(count("BEGIN:VALARM") < 22);
  CHECK(count("BEGIN:VALARM") > 10);  // each session to come has one
}

TEST_CASE("a calendar of somebody whom the job does not know is a mistake") {
  const Folder folder;
  const Said s =
      said({"plan", demo_in(folder), "--calendar", folder.in("ana.ics"), "--calendar-of", "Ana"});
  CHECK(s.code == exit_wrong_input);
  CHECK(s.err.find("--calendar-of: found \"Ana\"") != std::string::npos);
  CHECK_FALSE(std::filesystem::exists(folder.in("ana.ics")));
}

TEST_CASE("an output that cannot be written is a mistake, and the plan is printed all the same") {
  const Folder folder;
  const Said s = said({"plan", starter_in(folder), "--json", folder.in("no/plan.json")});
  CHECK(s.code == exit_wrong_input);
  CHECK(s.err.find("cannot be written") != std::string::npos);
  CHECK(s.out.size() > 1000);
  CHECK(s.out.find("Wrote") == std::string::npos);
}

TEST_CASE("whoever asks for files is told what was written where, but not beside a printed file") {
  const Folder folder;
  const std::string job = demo_in(folder);
  const Said s =
      said({"plan", job, "--page", folder.in("plan.html"), "--calendar", folder.in("plan.ics"),
            "--json", folder.in("plan.json"), "--csv", folder.in("tables")});
  CHECK(s.out.ends_with(
      "\nWrote the page to " + folder.in("plan.html") + "\nWrote the calendar to " +
      folder.in("plan.ics") + "\nWrote the plan as JSON to " + folder.in("plan.json") +
      "\nWrote steps.csv, areas.csv, shopping.csv to " + folder.in("tables") + "\n"));
  const Said printed = said({"plan", job, "--page", folder.in("plan.html"), "--json", "-"});
  CHECK(printed.out.starts_with("{"));
  CHECK(printed.out.find("Wrote") == std::string::npos);
}

TEST_CASE("a plan prints its first screen, one part, or all of it") {
  const Folder folder;
  const std::string job = demo_in(folder);
  const std::string first = said({"plan", job}).out;
  const std::string days = said({"plan", job, "--only", "days"}).out;
  const std::string full = said({"plan", job, "--full"}).out;
  CHECK(first.find("THE NEXT SESSIONS") != std::string::npos);
  CHECK(first.find("THE DAYS") == std::string::npos);
  CHECK(days.find("THE DAYS") != std::string::npos);
  CHECK(days.find("AREAS TO COAT") == std::string::npos);
  for (const char* title : {"THE NEXT SESSIONS", "THE DAYS", "AREAS TO COAT", "CAUTIONS"})
    CHECK(full.find(title) != std::string::npos);
}

}  // namespace tackfree::testing
