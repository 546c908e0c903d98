#include "tackfree/schedule/unplaced.hpp"

#include <set>
#include <string>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

TEST_CASE("each rule that keeps a step out has a sentence of its own, with a way out") {
  const testing::Scheduled s = testing::scheduled(testing::sample_job());
  const std::size_t coat = 6;
  REQUIRE(s.list.operations[coat].kind == OperationKind::coat);
  std::set<std::string> sentences;
  for (const HeldBy by : {HeldBy::previous_step, HeldBy::drying, HeldBy::air, HeldBy::quiet_hours,
                          HeldBy::calendar, HeldBy::person}) {
    Held held{.by = by, .operation = 5};
    held.gate = Gate::too_humid;
    const Unplaced found = unplaced(s.job, s.list, coat, held);
    CHECK(found.by == by);
    CHECK(found.why.size() > 30);
    sentences.insert(found.why);
  }
  CHECK(sentences.size() == 6);
  const Unplaced cramped = unplaced(s.job, s.list, coat, {.by = HeldBy::calendar});
  // 1.08 m2 at 8 m2/h, and 10 + 20 min around it.
  CHECK(cramped.why.find("38 min in one go (8 min coating, 30 min set-up") != std::string::npos);
  const Unplaced sanding = unplaced(s.job, s.list, 0, {.by = HeldBy::calendar});
  CHECK(sanding.why.find("one go") == std::string::npos);
}

}  // namespace
}  // namespace tackfree
