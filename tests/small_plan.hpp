// Small plan: a plan written down by hand, so that the reports are tested without the planner.
#pragma once

#include "tackfree/plan/areas.hpp"
#include "tackfree/plan/plan.hpp"

#include <string>
#include <utility>
#include <vector>

#include "holds.hpp"

namespace tackfree {

/// Names that a plan can be given, to try what hostile ones do.
struct SmallNames {
  std::string job = "Hall bench";
  std::string batch = "seat";
  std::string part = "seat board";
  std::string coating = "varnish";
};

/// A text that tries everything: controls, mark-up, CJK, emoji, bad UTF-8, calendar signs.
inline std::string hostile_name() {
  return "a\x1b[2J<script>\r\nEND:VEVENT\nSUMMARY:x,y;z\\ \u6728\u6750\U0001F333\u202E \xff\xc3" +
         std::string(10000, 'n');
}

inline Instant at(const char* utc) { return *parse_instant(utc); }

inline Coating small_coating(const std::string& name) {
  Coating c;
  c.name = name;
  c.class_key = "oil_polyurethane";
  c.class_title = "oil-based polyurethane varnish";
  c.law.name = "oxidative";
  c.law.activation_energy = sourced(kilojoules_per_mole(55), Origin::practice);
  c.law.stops_below = sourced(celsius(0), Origin::assumed);
  c.solids = sourced(percent(45), Origin::practice, "typical of labels");
  c.spread = sourced(square_metres_per_litre(12.3), Origin::practice);
  c.bare_factor = sourced(1.25, Origin::practice);
  c.coats_min = sourced(2, Origin::practice);
  c.coats_max = sourced(4, Origin::practice);
  c.film_aim = {sourced(micrometres(50), Origin::assumed),
                sourced(micrometres(80), Origin::assumed),
                sourced(micrometres(110), Origin::assumed)};
  c.film_cap = sourced(micrometres(160), Origin::practice);
  c.first_coat_thinner = sourced(percent(10), Origin::practice);
  c.volatiles = sourced(grams_per_litre(450), Origin::label);
  c.thinner_volatiles = sourced(grams_per_litre(780), Origin::practice);
  c.flash_point = sourced(celsius(40), Origin::label);
  c.label_after.at(index_of(Stage::handle)) = sourced(hours(8), Origin::practice);
  c.label_after.at(index_of(Stage::sand)) = sourced(hours(12), Origin::label);
  c.label_after.at(index_of(Stage::full_cure)) = sourced(days(14), Origin::practice);
  c.limits.put_on_min = sourced(celsius(10), Origin::practice);
  c.limits.put_on_max = sourced(celsius(32), Origin::practice);
  c.limits.humidity_max = sourced(humidity_percent(80), Origin::practice);
  c.limits.hold_min = sourced(celsius(5), Origin::practice);
  c.limits.dew_point_margin = sourced(kelvins(3), Origin::published, "MIL-HDBK-1110, par. 9.6.6");
  c.grits.bare = sourced(std::vector<Grit>{{120}, {180}}, Origin::practice);
  c.grits.bare_veneer = sourced(std::vector<Grit>{{150}, {180}}, Origin::practice);
  c.grits.after_first = sourced(Grit{240}, Origin::practice);
  c.grits.between = sourced(Grit{320}, Origin::practice);
  c.grits.before_last = sourced(Grit{320}, Origin::practice);
  c.words.thinner = "mineral spirits";
  c.words.advice = {"sheen"};
  c.tins = {{"1 qt", us_quarts(1), 24.0}};
  return c;
}

inline Job small_job(const SmallNames& names, UnitSystem units) {
  Job job;
  job.id = "hall-bench";
  job.name = names.job;
  job.note = "Invented for this test.";
  job.units = units;
  job.calendar.zone = *Zone::named("America/New_York");
  job.coatings = {small_coating(names.coating)};
  job.systems = {{.name = "clear",
                  .wear = Wear::normal,
                  .steps = {{.name = "varnish", .coating = names.coating, .method = "brush"}}}};
  job.batches = {{.name = names.batch, .system = "clear"},
                 {.name = "legs", .system = "clear", .sides = Sides::on_points}};
  job.parts = {{.name = names.part, .quantity = 1, .batch = names.batch},
               {.name = "leg", .quantity = 4, .batch = "legs"}};
  job.air = ConstantAir{celsius(15), humidity_percent(55)};
  Method brush{.key = "brush", .title = "brush"};
  brush.transfer = sourced(percent(95), Origin::practice);
  brush.rate = sourced(square_metres_per_hour(8), Origin::practice);
  job.data.methods = {brush};
  job.data.texts.advice = {{"sheen", {"Stir satin from the bottom, never shake it."}}};
  job.data.texts.deference = "The product's label and safety data sheet govern.";
  return job;
}

inline Operation small_operation(OperationKind kind, const std::string& key, std::size_t batch,
                                 int coat) {
  Operation op;
  op.key = key;
  op.kind = kind;
  op.batch = batch;
  op.coat = coat;
  op.work = minutes(30);
  op.area = square_metres(1.2);
  op.how = {"Work with the grain."};
  return op;
}

inline Operation small_coat(const std::string& key, std::size_t batch, int coat, Side side) {
  Operation op = small_operation(OperationKind::coat, key, batch, coat);
  op.coats = 2;
  op.side = side;
  op.coating = 0;
  op.method = 0;
  op.mixed = millilitres(coat == 1 ? 110 : 80);
  op.thinner = millilitres(coat == 1 ? 10 : 0);
  op.liquid = op.mixed - op.thinner;
  op.how = {coat == 1 ? "Thin only what goes into the pot." : "Full strength, with the grain."};
  return op;
}

/// Two batches: the seat is sanded in two pieces and coated once on its back, the legs once on
/// points in the same session; a second coat of the seat found no time.
inline Plan small_plan(const SmallNames& names = {}, UnitSystem units = UnitSystem::us) {
  Plan plan;
  plan.job = small_job(names, units);
  plan.now = at("2027-04-09T21:00:00Z");
  plan.takeoff.surfaces = {{0, Face::top, Side::show, Grain::face, square_metres(0.5)},
                           {0, Face::bottom, Side::back, Grain::face, square_metres(0.4)},
                           {0, Face::left, Side::show, Grain::end, square_metres(0.05)},
                           {1, Face::side, Side::show, Grain::face, square_metres(0.6)}};
  plan.takeoff.masking = {{0, metres(1.5)}};
  plan.volumes.coats = {
      {0, 0, 1, Side::back, square_metres(0.4), litres(0.05), litres(0.045), litres(0.005)},
      {1, 0, 1, Side::both, square_metres(0.6), litres(0.06), litres(0.055), litres(0.005)},
      {0, 0, 2, Side::show, square_metres(0.55), litres(0.08), litres(0.08), litres(0)}};
  plan.volumes.films = {
      {.batch = 0,
       .step = 0,
       .build = {2, micrometres(81.3), micrometres(33.3), micrometres(36.6), micrometres(49.2)},
       .aim = micrometres(80),
       .cap = micrometres(160),
       .verdict = StepFilm::Verdict::thin}};
  plan.thirst.resize(1);
  plan.slowness.resize(1);
  plan.tins_short.resize(1);
  plan.volumes.coatings = {{0, litres(0.18), litres(0.01), 1.2}};
  plan.to_come = plan.volumes;
  plan.list.operations = {
      small_operation(OperationKind::sand_bare, "seat/varnish/bare/both/sand-p120", 0, 0),
      small_coat("seat/varnish/coat-1/back/coat", 0, 1, Side::back),
      small_coat("legs/varnish/coat-1/both/coat", 1, 1, Side::both),
      small_coat("seat/varnish/coat-2/show/coat", 0, 2, Side::show),
      small_operation(OperationKind::turn_over, "seat/varnish/coat-1/both/turn-over", 0, 1)};
  plan.list.operations[0].grit = Grit{120};
  plan.list.operations[0].power_sanding = true;
  plan.list.operations[0].sheets = 0.8;
  plan.schedule.span = {plan.now, plan.now + Minutes(60L * 24 * 56)};
  Problems problems;
  plan.air = *AirSeries::over(plan.job.air, plan.schedule.span, problems);

  DatedStep sand{.operation = 0,
                 .pieces = {{at("2027-04-09T21:00:00Z"), at("2027-04-09T21:15:00Z")},
                            {at("2027-04-10T13:00:00Z"), at("2027-04-10T13:15:00Z")}}};
  sand.held = {{.by = HeldBy::now, .until = plan.now}};
  DatedStep back{.operation = 1,
                 .pieces = {{at("2027-04-10T14:10:00Z"), at("2027-04-10T14:40:00Z")}}};
  back.held = {{.by = HeldBy::air, .until = at("2027-04-10T14:10:00Z"), .gate = Gate::too_cold}};
  back.reaches.at(index_of(Stage::handle)) = at("2027-04-11T03:40:00Z");
  back.session = 0;
  DatedStep legs{.operation = 2,
                 .pieces = {{at("2027-04-10T14:40:00Z"), at("2027-04-10T15:10:00Z")}}};
  legs.session = 0;
  DatedStep turn{.operation = 4,
                 .pieces = {{at("2027-04-11T13:00:00Z"), at("2027-04-11T13:10:00Z")}}};
  turn.held = {{.by = HeldBy::drying,
                .until = at("2027-04-11T03:40:00Z"),
                .operation = 1,
                .stage = Stage::handle},
               {.by = HeldBy::calendar, .until = at("2027-04-11T13:00:00Z")}};
  turn.on_typical_air = true;
  plan.schedule.steps = {sand, back, legs, turn};
  plan.schedule.sessions = {{.coating = 0,
                             .method = 0,
                             .set_up = {at("2027-04-10T14:00:00Z"), at("2027-04-10T14:10:00Z")},
                             .clean_up = {at("2027-04-10T15:10:00Z"), at("2027-04-10T15:30:00Z")},
                             .steps = {1, 2}}};
  plan.schedule.outcomes = {{0, Stage::light_use, std::nullopt},
                            {1, Stage::light_use, at("2027-04-12T03:00:00Z")},
                            {1, Stage::full_cure, at("2027-04-30T03:00:00Z")}};
  plan.schedule.unplaced = {
      {.operation = 3, .by = HeldBy::air, .gate = Gate::too_cold, .waits_for = {}, .conflict = {}}};
  plan.emissions = {{0, grams(20.3)}};
  plan.cautions = {
      {.text = {"oily_rags", "WARNING", "Rags heat themselves.", "Fire.",
                "Spread them flat outside.", Origin::published, "NFPA tip sheet on oily rags",
                false, "Rags can catch fire: spread them flat outside."}}};
  CoatingPurchase varnish;
  varnish.expected = litres(0.2);
  varnish.nine_in_ten = litres(0.24);
  varnish.sizes = plan.job.coatings[0].tins;
  varnish.tins = {{1}, us_quarts(1), 24.0, true};
  varnish.left_over = us_quarts(1) - litres(0.2);
  varnish.on_surfaces = litres(0.18);
  varnish.kept_by_tools = litres(0.02);
  varnish.sessions = 1;
  varnish.cleanings = 2;
  plan.shopping.coatings = {varnish};
  ThinnerPurchase spirits;
  spirits.liquid = "mineral spirits";
  spirits.to_thin = litres(0.01);
  spirits.to_clean = litres(0.1);
  spirits.sessions = 1;
  spirits.cleanings = 1;
  spirits.expected = litres(0.11);
  spirits.nine_in_ten = litres(0.112);
  spirits.sizes = {{"1 pt", us_pints(1), {}}};
  spirits.usual_sizes = true;
  spirits.tins = {{1}, us_pints(1), 0, false};
  spirits.left_over = us_pints(1) - litres(0.11);
  plan.shopping.thinners = {spirits};
  plan.left_over.coatings = {{.coating = 0, .expected = varnish.left_over}};
  plan.left_over.thinners = {{"mineral spirits", spirits.left_over, spirits.to_clean}};
  plan.shopping.sundries = {
      {.item = Sundry::Item::abrasive, .amount = 1, .grit = Grit{120}, .area = square_metres(0.5)}};
  plan.list.operations[4].waits = {{.operation = 1, .stage = Stage::handle}};
  plan.course = course(plan.job, plan.list, plan.air, plan.schedule);
  plan.work = attended_work(plan.list, plan.schedule, plan.job.calendar.zone);
  plan.notes = {FilmNote{.batch = 0, .coats = 2, .fault = FilmNote::Fault::thin}};
  return plan;
}

/// Its areas alone.
inline Areas small_areas(const SmallNames& names = {}, UnitSystem units = UnitSystem::us) {
  Plan plan = small_plan(names, units);
  return {std::move(plan.job), std::move(plan.takeoff), std::move(plan.notes)};
}

}  // namespace tackfree
