#include "tackfree/document/wait_section.hpp"

#include "tackfree/text/text_page.hpp"

#include <string>

#include "holds.hpp"
#include "plan/planned_log.hpp"

namespace tackfree {
namespace {

using namespace testing;

std::string written(const Plan& plan, const std::vector<BatchWait>& waits) {
  TextPage page(200);
  write_batch_waits(page, plan, waits, StepWords(plan));
  return page.text();
}

Plan legs_too() {
  Job job = sample_job();
  add_legs(job);
  return planned_again(std::move(job), "2027-04-05T18:00Z");
}

std::size_t work_of(const Plan& plan, std::size_t batch, OperationKind kind) {
  for (std::size_t i = 0; i < plan.list.operations.size(); ++i)
    if (plan.list.operations[i].batch == batch && plan.list.operations[i].kind == kind) return i;
  return 0;
}

TEST_CASE("batches that wait alike share a line") {
  const Plan plan = legs_too();
  std::vector<BatchWait> waits;
  for (std::size_t batch = 0; batch < 2; ++batch)
    waits.push_back({.operation = work_of(plan, batch, OperationKind::sand_bare),
                     .until = plan.now + Minutes(90),
                     .by = HeldBy::dust,
                     .wait = {},
                     .share = {}});
  CHECK(written(plan, waits) ==
        "Don't  sand top, legs before 19:30 (in 1 h 30 min): its dust would fall on coats that are "
        "still wet.\n");
}

TEST_CASE("a batch with work that must wait is not told dry for other work") {
  const Plan plan = legs_too();
  const BatchWait over{
      .operation = work_of(plan, 0, OperationKind::turn_over),
      .until = plan.now,
      .by = HeldBy::drying,
      .wait = {.operation = work_of(plan, 0, OperationKind::coat), .stage = Stage::handle},
      .share = 1};
  CHECK(holds(written(plan, {over}),
              "Try    top: coat 1 of 3, back should be dry to handle by this estimate."));
  BatchWait later = over;
  later.operation = work_of(plan, 0, OperationKind::sand_between);
  later.until = plan.now + Minutes(24 * 60);
  later.wait.stage = Stage::sand;
  later.share = 0.4;
  CHECK(written(plan, {over, later}) ==
        "Don't  sand or coat top before Tue 6 Apr, 18:00 (in 24 h): coat 1 of 3, back is 40 % of "
        "the way to dry to sand.\n");
}

TEST_CASE("the reason names the rule between classes, the fault, the day and the board") {
  const Plan plan = legs_too();
  const std::size_t coat = work_of(plan, 0, OperationKind::coat);
  const auto reason = [&](BatchWait wait) {
    wait.operation = wait.operation == 0 ? coat : wait.operation;
    wait.until = plan.now + Minutes(60);
    return written(plan, {wait});
  };
  CHECK(holds(
      reason({.by = HeldBy::drying, .wait = {.operation = coat, .dry_for = days(3)}, .share = {}}),
      "needs 3 days of drying at the label's conditions before another kind goes"));
  CHECK(holds(reason({.by = HeldBy::drying,
                      .wait = {.operation = coat, .stage = Stage::sand, .films = 3},
                      .share = 0.2}),
              "the last 3 coats dry as one, and are 20 % of the way"));
  CHECK(holds(reason({.by = HeldBy::coats_a_day, .wait = {}, .share = {}}),
              "one more on the same day would stay soft"));
  CHECK(holds(reason({.by = HeldBy::not_before, .wait = {}, .share = {}}), "you set that date"));
  CHECK(holds(
      reason({.by = HeldBy::previous_step,
              .wait = {.operation = work_of(plan, 1, OperationKind::coat), .stage = Stage::handle},
              .share = {}}),
      "legs: coat 1 of 3, both sides has to be dry to handle first"));
}

}  // namespace
}  // namespace tackfree
