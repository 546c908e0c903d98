#include "tackfree/document/material_sections.hpp"

#include "tackfree/text/text_page.hpp"

#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

template <class Write>
std::string written_text(Write write) {
  TextPage page(80);
  write(page);
  return page.text();
}

}  // namespace

TEST_CASE("films are shown against their aim and cap with the verdict") {
  Plan plan = small_plan({}, UnitSystem::metric);
  const auto films = [&] {
    return written_text([&](Page& p) { write_films(p, plan, Figures(plan.job)); });
  };
  CHECK(holds(films(), "seat            2   81       33         37      49   80  160     thin\n"));
  CHECK(holds(films(), "  clear: varnish (brush); for normal wear\n"));
  CHECK(holds(films(), "Coats are the fewest that come near the aim"));
  plan.volumes.films[0].coats_fixed = true;
  CHECK(holds(films(), "  2*  "));
  CHECK(holds(films(), "* as you fixed them."));
}

TEST_CASE("what to buy names the tins and what is on the shelf") {
  Plan plan = small_plan({}, UnitSystem::metric);
  CoatingPurchase& purchase = plan.shopping.coatings[0];
  purchase.on_shelf = millilitres(300);
  purchase.sizes = {{"250 ml", millilitres(250), {}}, {"1 L", litres(1), {}}};
  purchase.tins = {{2, 1}, litres(1.5), 0, false};
  purchase.usual_sizes = true;
  const auto shopping = [&] {
    return written_text([&](Page& p) { write_shopping(p, plan, Figures(plan.job)); });
  };
  CHECK(holds(shopping(), "On the shelf     300 ml\n"));
  CHECK(holds(shopping(), "2 x 250 ml + 1 x 1 L (usual sizes; the job names none)\n"));
  CHECK_FALSE(holds(shopping(), "cost"));
  purchase.tins.counts = {0, 0};
  CHECK(holds(shopping(), "Buy              nothing"));
}

TEST_CASE("a tin that is too old is told and not counted") {
  Plan plan = small_plan({}, UnitSystem::metric);
  const auto shopping = [&] {
    return written_text([&](Page& p) { write_shopping(p, plan, Figures(plan.job)); });
  };
  CHECK_FALSE(holds(shopping(), "not counted"));
  plan.shopping.coatings[0].too_old = {{millilitres(400), parse_date("2025-11-02")}};
  CHECK(holds(shopping(), "  Not counted      400 ml opened on 2025-11-02: open for too long\n"));
  CHECK_FALSE(holds(shopping(), "on the shelf"));
}

TEST_CASE("thinner and cleaner stand apart from the coatings, with their uses and tins") {
  Plan plan = small_plan({}, UnitSystem::metric);
  const auto shopping = [&] {
    return written_text([&](Page& p) { write_shopping(p, plan, Figures(plan.job)); });
  };
  CHECK(holds(shopping(),
              "THINNER AND CLEANER\n\n"
              "mineral spirits: 10 ml to thin, 100 ml for 1 cleaning of the tools\n"
              "  You will likely use 110 ml. Buy for 112 ml, enough in nine jobs out of ten.\n"
              "  Buy              1 x 1 pt (usual sizes; the job names none)\n"));
  plan.shopping.thinners.clear();
  CHECK_FALSE(holds(shopping(), "THINNER"));
  plan.shopping.coatings[0].tins = {{0}, Volume(), 0, true};
  // What is not bought has no cost.
  CHECK_FALSE(holds(shopping(), "cost"));
}

TEST_CASE("the litres add up to what is expected, row by row") {
  const Plan plan = small_plan({}, UnitSystem::metric);
  const std::string text =
      written_text([&](Page& p) { write_shopping(p, plan, Figures(plan.job)); });
  CHECK(holds(text,
              "  from the tins                       area (m\u00b2)  mixed (ml)  finish  thinner\n"
              "  coat 1                                   1.00         110     100       10\n"
              "  coat 2                                   0.55          80      80        0\n"
              "  left in brush and pot, 2 cleanings          -          20      20        -\n"
              "  --------------------------------------------------------------------------\n"
              "  total                                                 210     200       10\n"));
}

TEST_CASE("other things carry their amounts in the person's units") {
  Plan plan = small_plan({}, UnitSystem::metric);
  plan.shopping.sundries.push_back({.item = Sundry::Item::masking_tape, .amount = 7.2});
  const std::string text =
      written_text([&](Page& p) { write_shopping(p, plan, Figures(plan.job)); });
  CHECK(holds(text, "[ ]          1 abrasive sheet or disc, P120: for 0.50 m\u00b2\n"));
  CHECK(holds(text, "[ ]        8 m masking tape: around what is masked, anew for each coat\n"));
}

TEST_CASE("batches with the same grits share a line") {
  Plan plan = small_plan();
  Operation legs = plan.list.operations[0];
  legs.batch = 1;
  Operation between = legs;
  between.kind = OperationKind::sand_between;
  between.coat = 2;
  between.grit = Grit{240};
  plan.list.operations.push_back(legs);
  CHECK(written_text([&](Page& p) { write_grits(p, plan); }) ==
        "GRITS\n  seat, legs: bare wood P120\n");
  plan.list.operations.push_back(between);
  CHECK(written_text([&](Page& p) { write_grits(p, plan); }) ==
        "GRITS\n  seat: bare wood P120\n  legs: bare wood P120; before coat 2 P240\n");
}
