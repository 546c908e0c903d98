#include "tackfree/words/note_words.hpp"

#include <vector>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::string text_of(const Note& note, const Plan& plan = small_plan()) {
  return note_text(note, plan.job, plan.list, Figures(plan.job));
}

/// The small plan with its only coat of the legs put on before its time.
Plan with_early_coat() {
  Plan plan = small_plan();
  Done done;
  done.counts_from = at("2027-04-10T22:30:00Z");
  done.films_wet = 1.74;
  plan.list.operations[1].done = done;
  return plan;
}

}  // namespace

TEST_CASE("a film is told by what to do about it") {
  using Fault = FilmNote::Fault;
  CHECK(text_of(FilmNote{0, 6, Fault::thick}) ==
        "\"seat\": 6 coats build more dry film than this class bears; plan fewer, or it may stay "
        "soft and crack.");
  CHECK(holds(text_of(FilmNote{0, 1, Fault::thin}), "plan another coat"));
  CHECK(holds(text_of(FilmNote{0, 3, Fault::thin_at_most}), "the class bears no more coats"));
}

TEST_CASE("damp air is told with the humidity from which the class may turn milky") {
  CHECK(holds(text_of(DampAirNote{0, 2, humidity_percent(65)}),
              "2 of the coats of varnish go on above 65 % RH"));
}

TEST_CASE("parts are told by name, an allowance with its figure, origin and source") {
  CHECK(holds(text_of(OneFaceNote{0}), "\"seat board\" is a wide solid board"));
  CHECK(holds(text_of(AllowanceNote{1, sourced(1.8, Origin::published, "a standard")}),
              "\"leg\" counts 1.8 times its flat face on each side (published: a standard)"));
}

TEST_CASE("a pair asks for a test board unless it holds, with the reason of the data") {
  Plan plan = small_plan();
  plan.job.coatings.push_back(small_coating("seal"));
  plan.job.coatings[1].class_title = "shellac";
  plan.job.systems[0].steps.insert(plan.job.systems[0].steps.begin(),
                                   {.name = "seal", .coating = "seal", .method = "brush"});
  using Trust = PairNote::Trust;
  CHECK(text_of(PairNote{0, 1, Trust::holds, "it bars resin"}, plan) ==
        "System \"clear\" puts oil-based polyurethane varnish over shellac: it bars resin.");
  CHECK(holds(text_of(PairNote{0, 1, Trust::doubtful, "thin"}, plan), "thin. Try the pair on a"));
  CHECK(holds(text_of(PairNote{0, 1, Trust::unknown, {}}, plan), "ask the makers"));
  const std::string told = "No rule for the pair is known";
  CHECK_FALSE(holds(text_of(PairNote{0, 1, Trust::unknown, {}}, plan), told));
  CHECK(holds(text_of(PairNote{0, 1, Trust::unknown, {}, hours(30)}, plan),
              told + ", so the plan lets the lower coat harden first: 30 h in the label's air"));
  CHECK(subject_of(PairNote{0, 1, Trust::holds, {}}) == "pair");
  CHECK(subject_of(PairNote{0, 1, Trust::doubtful, {}}) == "test board");
}

TEST_CASE("a coat is named by batch, step and number, and once more where a fault has cost it") {
  Plan plan = small_plan();
  plan.job.coatings[0].recoat_unsanded_within = sourced(hours(12), Origin::label);
  CHECK(text_of(MissedWindowNote{{0, 0, 2, 1}, 0}, plan)
            .starts_with("Batch \"seat\", varnish coat 2 once more: your hours miss the 12 h "
                         "within which varnish"));
  CHECK(text_of(PutOffNote{{1, 0, 2, 0}}).starts_with("Batch \"legs\", varnish coat 2: the work"));
  CHECK(holds(text_of(LittleToSpareNote{{0, 0, 2, 0}, minutes(90), hours(25)}),
              "has 1.5 h to spare before the coat below takes it unsanded no more; 25 h would"));
}

TEST_CASE("dull coats under a clear finish are told with how many gloss would serve better") {
  CHECK(holds(text_of(SheenNote{0, 0, 2, 3}), "in place of \"varnish\" in 2 of 3 coats"));
}

TEST_CASE("clock times, days and areas of notes are in the person's own units") {
  CHECK(holds(text_of(LateWorkNote{22 * 60}), "Some sessions run past 10:00 pm:"));
  CHECK(holds(text_of(EarlyCoatNote{1}, with_early_coat()),
              "put on at Sat Apr 10, 6:30 pm, when waiting would have had it on, and as thick as "
              "1.7 coats"));
  for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    Plan plan = small_plan({}, units);
    plan.job.rooms = {{"shed", square_metres(2.5), std::nullopt, 0}};
    BatchRules& rules = plan.job.batches[0].rules;
    rules.lot_of = "top";
    rules.lots = 2;
    rules.room = 0;
    rules.pins = {{"varnish", 4, std::nullopt, *parse_date("2027-04-17"), {0, 24 * 60}, 0}};
    const bool in_us = units == UnitSystem::us;
    CHECK(holds(text_of(LotsNote{0, 4.32, 2.5, false}, plan),
                in_us
                    ? "\"top\" takes 46.5 sq ft to dry and \"shed\" has 26.9 sq ft: it goes"
                    : "\"top\" takes 4.32 m\u00b2 to dry and \"shed\" has 2.50 m\u00b2: it goes"));
    CHECK(holds(text_of(LotsNote{0, 7, 4, true}, plan),
                "takes 7 places to dry and \"shed\" has 4 places: it goes through in 2 lots."));
    CHECK(holds(text_of(LostPinNote{0, 0}, plan),
                in_us ? "Coat 4 of \"varnish\" is set for Sat Apr 17, but batch \"seat\""
                      : "Coat 4 of \"varnish\" is set for Sat 17 Apr, but batch \"seat\""));
  }
}

TEST_CASE("a coat that may not hold is told by its cause, with how to try it") {
  using Cause = AdhesionNote::Cause;
  CHECK(text_of(AdhesionNote{1, Cause::left_out})
            .starts_with("Batch \"seat\", varnish coat 1 (back): the sanding before it was left "
                         "out. The coat may "
                         "peel."));
  CHECK(text_of(AdhesionNote{2, Cause::window_shut}).ends_with("If you did sand, log that."));
}

TEST_CASE("lines of the log that are left out are told with what is wrong with them") {
  CHECK(text_of(LeftOutNote{{.key = "coating", .found = "gone", .wanted = "wanted a coating"}})
            .starts_with("A line of the log is left out: "));
  CHECK(text_of(MoreLeftOutNote{2}).starts_with("There are 2 more mistakes"));
}

TEST_CASE("every kind of note has a subject, and what needs no figure a sentence") {
  CHECK(subject_of(FilmNote{}) == "film");
  CHECK(subject_of(LeftOutNote{}) == "log");
  CHECK(subject_of(PutOffNote{}) == "recoat window");
  CHECK(subject_of(PlainNote::too_cold_as_aired) == "airing");
  CHECK(subject_of(PlainNote::faster_than_label) == "label");
  CHECK(subject_of(PlainNote::several_people_tried) == "people");
  CHECK(holds(text_of(PlainNote::too_cold_as_aired), "Heat more, coat in milder weather"));
  CHECK(holds(text_of(PlainNote::faster_than_label), "below the label's hours"));
  CHECK(holds(text_of(PlainNote::several_people_tried), "the same people are there"));
  CHECK(text_of(FillerNote{"Pack it across the grain."}) == "Pack it across the grain.");
}
