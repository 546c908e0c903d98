#include "tackfree/words/step_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a step's title names coat, side and grit, and the batch where there are several") {
  Plan plan = small_plan();
  const StepWords words(plan);
  const auto& ops = plan.list.operations;
  CHECK(words.title(ops[0]) == "sand bare wood, P120");
  CHECK(words.title(ops[1]) == "coat 1 of 2, back");
  CHECK(words.title(ops[2]) == "coat 1 of 2, both sides");
  CHECK(words.title(ops[3]) == "coat 2 of 2, show side");
  CHECK(words.full_title(ops[4]) == "seat: turn over");
  plan.job.batches.pop_back();
  CHECK(words.full_title(ops[4]) == "turn over");
}

TEST_CASE("a title names the coating where a system has several") {
  Plan plan = small_plan();
  plan.job.systems[0].steps.push_back({.name = "sealer", .coating = "varnish", .method = "brush"});
  plan.list.operations[1].step = 1;
  CHECK(StepWords(plan).title(plan.list.operations[1]) == "sealer coat 1 of 2, back");
}

TEST_CASE("a reason that is common to all steps is not told") {
  const Plan plan = small_plan();
  const StepWords words(plan);
  CHECK(words.why(plan.schedule.steps[0]).empty());  // now
  CHECK(words.why(plan.schedule.steps[2]).empty());  // nothing
}

TEST_CASE("the hours on the label are not said twice when this air keeps to them") {
  Plan plan = small_plan();
  plan.schedule.steps[3].held = {{.by = HeldBy::drying,
                                  .until = at("2027-04-10T22:40:00Z"),
                                  .operation = 1,
                                  .stage = Stage::handle}};
  CHECK(StepWords(plan).why(plan.schedule.steps[3]) ==
        "Coat 1 on the back can be handled from Sat Apr 10, 6:40 pm, after 8 h.");
}

TEST_CASE(
    "hours that the tin does not give are those usual for its kind, of a coat with its step") {
  Plan plan = small_plan();
  plan.job.systems[0].steps.push_back({.name = "sealer", .coating = "varnish", .method = "brush"});
  plan.job.coatings[0].label_after.at(index_of(Stage::handle))->origin = Origin::practice;
  plan.schedule.steps[3].held = {{.by = HeldBy::drying,
                                  .until = at("2027-04-11T03:40:00Z"),
                                  .operation = 1,
                                  .stage = Stage::handle}};
  const DatedStep& turn = plan.schedule.steps[3];
  CHECK(StepWords(plan).why(turn, Reasons::all_with_origins) ==
        "Varnish coat 1 on the back can be handled from Sat Apr 10, 11:40 pm: 8 h usual for its "
        "kind become 13 h in this air.");
  CHECK(StepWords(plan).why(turn) ==
        "Varnish coat 1 on the back can be handled from Sat Apr 10, 11:40 pm: 8 h at room "
        "temperature become 13 h in this air.");
}

TEST_CASE("long waits end at the next working hours, short ones go without saying") {
  Plan plan = small_plan();
  DatedStep& turn = plan.schedule.steps[3];
  CHECK_FALSE(StepWords(plan).why(turn).ends_with("These are your next working hours."));
  turn.held[1].until += Minutes(24 * 60);
  CHECK(StepWords(plan).why(turn).ends_with(". These are your next working hours."));
}

TEST_CASE("dust and quiet hours are told only where nothing graver came after them") {
  Plan plan = small_plan();
  DatedStep& coat = plan.schedule.steps[1];
  coat.held.insert(coat.held.begin(), {.by = HeldBy::dust, .until = at("2027-04-09T22:00:00Z")});
  CHECK(StepWords(plan).why(coat, Reasons::all_with_origins) ==
        "It is too cold to coat until 10:10 am (the limit is 50 \u00b0F) [practice].");
  CHECK(StepWords(plan).why(coat) ==
        "It is too cold to coat until 10:10 am (the limit is 50 \u00b0F).");
  coat.held.pop_back();
  CHECK(StepWords(plan).why(coat) == "Sanding dust was settling through Fri Apr 9.");
  coat.held.back().until = at("2027-04-10T14:00:00Z");
  CHECK(StepWords(plan).why(coat) == "The sanding dust needs until 10:00 am to settle.");
  coat.held.insert(coat.held.begin(), {.by = HeldBy::dust, .until = at("2027-04-10T13:30:00Z")});
  CHECK(StepWords(plan).why(coat) ==
        "The sanding dust needs until 10:00 am to settle.");  // and not twice
  DatedStep sanding = coat;
  sanding.operation = plan.schedule.steps[0].operation;
  REQUIRE(plan.list.operations.at(sanding.operation).grit);
  CHECK(StepWords(plan).why(sanding) == "Wet coats would catch the sanding dust until 10:00 am.");
  coat.held.erase(coat.held.begin());
  coat.held.back() = {.by = HeldBy::quiet_hours, .until = at("2027-04-09T22:00:00Z")};
  CHECK(StepWords(plan).why(coat) == "Quiet hours: no power sanding through Fri Apr 9.");
}

TEST_CASE("a wait between two classes is told as drying in the label's air") {
  Plan plan = small_plan();
  DatedStep& turn = plan.schedule.steps[3];
  for (Held& held : turn.held)
    if (held.by == HeldBy::drying) {
      held.stage.reset();
      held.dry_for = hours(72);
    }
  const std::string why = StepWords(plan).why(turn);
  CAPTURE(why);
  CHECK(why.find(
            "Coat 1 on the back has to harden as much as in 3 days at room temperature: until ") !=
        std::string::npos);
}

TEST_CASE("each rule of the air is told with the coating's own limit") {
  Plan plan = small_plan({}, UnitSystem::metric);
  Coating& varnish = plan.job.coatings[0];
  varnish.limits.hold_put_on_min = sourced(hours(24), Origin::published);
  const StepWords words(plan);
  CHECK(words.rule(Gate::too_cold, varnish) == "too cold to coat (under 10 \u00b0C)");
  CHECK(words.rule(Gate::too_warm, varnish) == "too warm to coat (over 32 \u00b0C)");
  CHECK(words.rule(Gate::too_humid, varnish) == "too damp to coat (over 80 % RH)");
  CHECK(words.rule(Gate::dew, varnish) == "too near the dew point (under 3 \u00b0C above it)");
  CHECK(words.rule(Gate::cold_before_dry, varnish) ==
        "too cold before touch-dry (under 5 \u00b0C)");
  CHECK(words.rule(Gate::cold_within_hold, varnish) ==
        "too cold within 24 h of coating (under 10 \u00b0C)");
}

TEST_CASE("a wait on another batch's coat names that batch") {
  Plan plan = small_plan();
  plan.schedule.steps[3].held[0].operation = 2;
  CHECK(StepWords(plan).why(plan.schedule.steps[3]).starts_with("Coat 1 of legs can be handled"));
}

TEST_CASE("how-to texts are numbered once each, in the order of the steps") {
  const HowTo how_to(small_plan());
  REQUIRE(how_to.entries().size() == 3);
  CHECK(how_to.entries()[0].title() == "sand bare");
  CHECK(how_to.entries()[1].title() == "coat 1");
  CHECK(how_to.number_of(1) == 2);
  CHECK(how_to.number_of(2) == 2);
  CHECK(how_to.number_of(4) == 1);  // the same words
  Plan silent = small_plan();
  silent.list.operations[4].how.clear();
  CHECK_FALSE(HowTo(silent).number_of(4));
}

TEST_CASE("a grit that is not for all parts of a batch says for which it is") {
  Plan plan = small_plan();
  const Operation& sanding = plan.list.operations[0];
  plan.job.coatings[0].grits.bare.value = {Grit{120}, Grit{150}};
  plan.job.coatings[0].grits.bare_veneer.value = {Grit{150}};
  plan.job.parts.resize(2);
  for (Part& part : plan.job.parts) part.batch = plan.job.batches[sanding.batch].name;
  CHECK(StepWords(plan).title(sanding) == "sand bare wood, P120");
  plan.job.parts[1].material = Material::plywood;
  CHECK(StepWords(plan).title(sanding) == "sand bare wood, P120 (solid parts only)");
  plan.list.operations[0].grit = Grit{150};
  CHECK(StepWords(plan).title(sanding) == "sand bare wood, P150");
}

TEST_CASE("the first coat of a session is poured with what the tool keeps") {
  Plan plan = small_plan();
  plan.job.data.methods.at(0).kept_by_tool = sourced(millilitres(90), Origin::practice);
  const DatedStep& first = plan.schedule.steps.at(plan.schedule.sessions.at(0).steps.at(0));
  const Operation& coat = plan.list.operations.at(first.operation);
  const StepWords words(plan);
  CHECK(words.pour(coat).starts_with(static_cast<const WorkWords&>(words).pour(coat)));
  CHECK(words.pour(coat).ends_with("oz in the tool"));
  plan.schedule.sessions.clear();
  CHECK(StepWords(plan).pour(coat) == static_cast<const WorkWords&>(words).pour(coat));
}
