#include "tackfree/html/plan_page.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("the page begins with what to do now and when it is ready, before days and charts") {
  const std::string page = html_report(judged_plan());
  CHECK(page.starts_with("<!DOCTYPE html>\n<html lang=\"en\">"));
  const std::size_t next = page.find("<dt><bdi>Now</bdi>");
  const std::size_t ready = page.find("<dt><bdi>Ready</bdi>");
  REQUIRE(next != std::string::npos);
  REQUIRE(ready != std::string::npos);
  CHECK(next < ready);
  CHECK(ready < page.find("class=\"session\""));
  CHECK(page.find("class=\"session\"") < page.find("role=\"img\""));
}

TEST_CASE("every section of the plan is on the page, in the order a person asks") {
  const std::string page = html_report(judged_plan());
  std::size_t last = 0;
  for (const char* id :
       {"the-days", "what-to-buy", "also-have-at-hand", "work-and-waits", "when-you-can-use-it",
        "finish-how-much-which-tins", "areas-to-coat", "coats-and-film", "grits", "air-and-drying",
        "fumes-and-airing", "cautions", "where-the-numbers-come-from"}) {
    const std::size_t at = page.find("id=\"" + std::string(id) + "\"");
    CHECK_MESSAGE(at != std::string::npos, id);
    CHECK_MESSAGE(at > last, id);
    last = at;
  }
  CHECK(holds(page, "The product&#39;s label and safety data sheet govern."));
}

TEST_CASE("the background is folded; where all is to be printed it is unfolded, with the how-to") {
  const std::string sheets = html_report(judged_plan());
  const std::string whole = html_report(judged_plan(), Printed::whole);
  CHECK(holds(sheets, "<body class=\"sheets\">"));
  CHECK(holds(sheets, "<details class=\"more\" id=\"cautions\"><summary>"));
  CHECK_FALSE(holds(sheets, "id=\"how-to\""));
  CHECK(holds(whole, "<body class=\"whole\">"));
  CHECK(holds(whole, "<details class=\"more\" id=\"cautions\" open><summary>"));
  CHECK(holds(whole, "<details class=\"more\" id=\"how-to\" open><summary>"));
}

TEST_CASE("paper has the job's name and the plan's date on each sheet") {
  CHECK(holds(html_report(small_plan()),
              "<div class=\"running\"><p><bdi>Hall bench</bdi>: plan of Fri Apr 9, 2027, 5:00 pm"));
}

TEST_CASE("every link on the page leads somewhere on the page") {
  const std::string page = html_report(judged_plan());
  for (std::size_t at = 0; (at = page.find("href=\"", at)) != std::string::npos;) {
    at += 6;
    const std::string target = page.substr(at, page.find('"', at) - at);
    REQUIRE(target.starts_with("#"));
    CHECK_MESSAGE(holds(page, "id=\"" + target.substr(1) + "\""), target);
  }
}

TEST_CASE("names that try to be markup stay text, and the page stays small") {
  const std::string hostile = hostile_name();
  const std::string page = html_report(small_plan({hostile, hostile, hostile, hostile}));
  CHECK_FALSE(holds(page, "<script"));
  CHECK(holds(page, "&lt;script&gt;"));
  CHECK_FALSE(holds(page, "\xE2\x80\xAE"));
  CHECK(page.find('\x1b') == std::string::npos);
  CHECK(page.size() < 300000);
}

TEST_CASE("the same plan gives the same page, and an empty plan gives one too") {
  CHECK(html_report(judged_plan()) == html_report(judged_plan()));
  Plan plan = small_plan();
  plan.schedule.steps.clear();
  plan.schedule.sessions.clear();
  plan.course = {};
  CHECK(holds(html_report(plan), "Nothing that has a time."));
}
