#include "tackfree/words/ready_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Plan dated_plan() {
  Plan plan = small_plan();
  plan.schedule.unplaced.clear();
  plan.schedule.ready_at = at("2027-04-12T03:00:00Z");
  return plan;
}

/// The legs are held back for days, by `by`, and decide the date.
std::string held_by(HeldBy by, std::optional<Gate> gate = {}) {
  Plan plan = dated_plan();
  plan.schedule.outcomes[0].at = at("2027-04-11T03:00:00Z");
  plan.schedule.outcomes[1].at = plan.schedule.ready_at = at("2027-04-22T03:00:00Z");
  plan.list.outcomes = {{.batch = 1, .stage = Stage::light_use, .coats = {2}}};
  DatedStep& legs = plan.schedule.steps[2];
  legs.pieces = {{at("2027-04-14T14:40:00Z"), at("2027-04-14T15:10:00Z")}};
  legs.held = {{.by = by, .until = at("2027-04-14T13:00:00Z"), .gate = gate}};
  return holding_words(plan, StepWords(plan));
}

}  // namespace

TEST_CASE("a plan says when it is ready, when hardware goes on and when it is cured") {
  Plan plan = dated_plan();
  const Figures figures(plan.job);
  CHECK(ready_words(plan, figures) ==
        "Sun Apr 11, 11:00 pm, for light use. Fully cured on Thu Apr 29.");
  DatedStep hardware;
  hardware.operation = plan.list.operations.size();
  plan.list.operations.push_back({.kind = OperationKind::fit_hardware});
  hardware.pieces = {{at("2027-04-14T14:00:00Z"), at("2027-04-14T14:45:00Z")}};
  plan.schedule.steps.push_back(hardware);
  CHECK(holds(ready_words(plan, figures), "for light use. Hardware on Wed Apr 14. Fully"));
  plan.schedule.steps.back().pieces = {{at("2027-04-11T14:00:00Z"), at("2027-04-11T14:45:00Z")}};
  CHECK_FALSE(holds(ready_words(plan, figures), "Hardware"));
}

TEST_CASE("one batch that is not cured within the plan keeps the whole from being so") {
  Plan plan = dated_plan();
  plan.schedule.ready_at = at("2027-04-12T03:07:00Z");
  plan.schedule.outcomes.push_back({0, Stage::full_cure, std::nullopt});
  CHECK(ready_words(plan, Figures(plan.job)) ==
        "Mon Apr 12, midnight, for light use. Fully cured after Fri Jun 4.");
}

TEST_CASE("work without a time leaves no date") {
  const Plan plan = small_plan();
  CHECK(ready_words(plan, Figures(plan.job)).starts_with("No date yet"));
  CHECK(holding_words(plan, StepWords(plan)).empty());
  CHECK(proof_words(plan, Figures(plan.job)).empty());
}

TEST_CASE("what holds the work up is the longest wait that decides the date, in a sentence") {
  CHECK(held_by(HeldBy::air, Gate::too_cold) ==
        "it is too cold to coat legs until Wed Apr 14, a wait of 4.7 days.");
  CHECK(held_by(HeldBy::space) ==
        "there is no space to dry legs until Wed Apr 14, a wait of 4.7 days.");
  CHECK(held_by(HeldBy::person) ==
        "your hours go to other work before legs until Wed Apr 14, a wait of 4.7 days.");
}

TEST_CASE("what is proved says so, and how much sooner it could be at best") {
  Plan plan = dated_plan();
  const Figures figures(plan.job);
  plan.schedule.proof = Proof{at("2027-04-11T21:00:00Z"), true, true};
  CHECK(proof_words(plan, figures) ==
        "Nothing faster is possible with your hours in this weather (proved).");
  plan.schedule.proof->earliest_ready = false;
  CHECK(proof_words(plan, figures) ==
        "At best it could be ready Sun Apr 11, 5:00 pm, 6 h sooner (proved).");
  plan.job.aim = Aim::sessions;
  CHECK(holds(proof_words(plan, figures), "No plan needs fewer coating sessions, and with as few"));
}

TEST_CASE("a job that was ready in time says since when, and proves nothing of it") {
  Plan plan = dated_plan();
  plan.schedule.ready_at = plan.now - Minutes(3 * 24 * 60);
  plan.schedule.proof = Proof{plan.now, true, true};
  CHECK(ready_words(plan, Figures(plan.job)).starts_with("Since "));
  CHECK(proof_words(plan, Figures(plan.job)).empty());
}

TEST_CASE("what moved since the last plan is one sentence") {
  Plan plan = dated_plan();
  const Figures figures(plan.job);
  CHECK(moved_words(plan, figures).empty());
  plan.job.last_plan.emplace();
  plan.job.last_plan->now = at("2027-04-08T21:00:00Z");
  plan.job.last_plan->ready_at = plan.schedule.ready_at;
  CHECK(moved_words(plan, figures) == "Since the plan of Thu Apr 8, 5:00 pm: nothing moved.");
  plan.job.last_plan->ready_at = *plan.schedule.ready_at - Minutes(2 * 24 * 60);
  plan.moves.resize(3);
  CHECK(moved_words(plan, figures) ==
        "Since the plan of Thu Apr 8, 5:00 pm: ready 2 days later, 3 steps moved.");
}

TEST_CASE("that the last plan had it then holds nothing up where there is another reason") {
  Plan plan = dated_plan();
  plan.schedule.outcomes[0].at = at("2027-04-11T03:00:00Z");
  plan.schedule.outcomes[1].at = plan.schedule.ready_at = at("2027-04-22T03:00:00Z");
  plan.list.outcomes = {{.batch = 1, .stage = Stage::light_use, .coats = {2}}};
  DatedStep& legs = plan.schedule.steps[2];
  legs.pieces = {{at("2027-04-14T14:40:00Z"), at("2027-04-14T15:10:00Z")}};
  legs.held = {{.by = HeldBy::space, .until = at("2027-04-14T13:00:00Z")},
               {.by = HeldBy::last_plan, .until = at("2027-04-14T14:40:00Z")}};
  CHECK(holds(holding_words(plan, StepWords(plan)), "no space to dry legs"));
  legs.held.erase(legs.held.begin());
  CHECK(holds(holding_words(plan, StepWords(plan)), "the last plan keeps legs waiting"));
}
