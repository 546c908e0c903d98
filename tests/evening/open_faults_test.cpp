#include "tackfree/evening/open_faults.hpp"

#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

std::vector<OpenFault> faults(std::vector<LogEntry> entries, const char* now) {
  const Plan plan = planned_log(std::move(entries), now);
  return open_faults(plan.job, plan.list);
}

TEST_CASE("a fault is open with its advice until the repair is done") {
  std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:00Z"),
                            fault(2, back_1, "2027-04-06T20:00Z", Fault::runs)};
  const auto open = faults(log, "2027-04-06T20:05Z");
  REQUIRE(open.size() == 1);
  CHECK(open[0].fault == Fault::runs);
  CHECK(open[0].advice.starts_with("A run"));
  log.push_back(entry(3, LogKind::done, "top/finish/coat-1/back/repair-runs", "2027-04-12T19:00Z"));
  CHECK(faults(log, "2027-04-12T19:05Z").empty());
}

TEST_CASE("a tacky coat is open until it passes a thumb test") {
  std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:00Z"),
                            fault(2, back_1, "2027-04-09T20:00Z", Fault::tacky)};
  const auto open = faults(log, "2027-04-09T20:05Z");
  REQUIRE(open.size() == 1);
  CHECK(open[0].advice.find("tacky") != std::string::npos);
  log.push_back(thumb(3, back_1, "2027-04-12T19:00Z", true));
  CHECK(faults(log, "2027-04-12T19:05Z").empty());
}

}  // namespace
}  // namespace tackfree
