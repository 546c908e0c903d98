#include "tackfree/shopping/shopping_list.hpp"

#include <algorithm>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

/// A job with its coats and as many sessions as it has coats.
struct Case {
  Job job = small_job();
  OperationList list{};
  Schedule schedule{};
  Length tape{};

  explicit Case(int sessions = 3) {
    for (int i = 0; i < sessions; ++i) schedule.sessions.emplace_back();
  }
  JobVolumes volumes() const {
    return job_volumes(job, take_off(job), std::vector<double>(job.coatings.size(), 1.0));
  }
  ShoppingList shop() const { return shopping_list(job, volumes(), list, schedule, tape); }
  void sand(OperationKind kind, int grit, double sheets) {
    Operation operation;
    operation.kind = kind;
    operation.grit = Grit{grit};
    operation.sheets = sheets;
    operation.area = square_metres(2.3);
    operation.work = hours(1.5);
    list.operations.push_back(operation);
  }
};

const Sundry* found(const ShoppingList& list, const std::string& start) {
  for (const Sundry& sundry : list.sundries)
    if (sundry.what.starts_with(start)) return &sundry;
  return nullptr;
}

double amount(const ShoppingList& list, const std::string& start) {
  const Sundry* sundry = found(list, start);
  return sundry == nullptr ? 0.0 : sundry->amount;
}

}  // namespace

// The project's own arithmetic: 0.62284 L on the wood, three sessions of 0.020 L.
TEST_CASE("the worked top takes 0.68284 litres, what the brush keeps included") {
  const ShoppingList list = Case(3).shop();
  REQUIRE(list.coatings.size() == 1);
  const CoatingPurchase& varnish = list.coatings[0];
  CHECK(varnish.sessions == 3);
  CHECK(varnish.on_surfaces.in(litres) == Approx(0.62284).epsilon(1e-5));
  CHECK(varnish.kept_by_tools.in(litres) == Approx(0.060));
  CHECK(varnish.expected.in(litres) == Approx(0.68284).epsilon(1e-5));
}

TEST_CASE("more sessions keep more liquid and the reserve is on the wood's share only") {
  const CoatingPurchase three = Case(3).shop().coatings.at(0);
  const CoatingPurchase six = Case(6).shop().coatings.at(0);
  CHECK((six.expected - three.expected).in(litres) == Approx(0.060));
  CHECK((six.nine_in_ten - three.nine_in_ten).in(litres) == Approx(0.060));
  CHECK((three.nine_in_ten - three.kept_by_tools) / three.on_surfaces ==
        Approx(Case().volumes().coatings[0].nine_in_ten));
}

TEST_CASE("a coat that found no time still counts as a session") {
  Case one(2);
  Operation coat;
  coat.kind = OperationKind::coat;
  coat.coating = 0;
  coat.method = 0;
  Operation sanding;
  sanding.kind = OperationKind::sand_between;
  one.list.operations = {coat, sanding};
  one.schedule.unplaced.push_back({.operation = 0, .by = HeldBy::air, .gate = {}, .why = "cold"});
  one.schedule.unplaced.push_back({.operation = 1, .by = HeldBy::air, .gate = {}, .why = "cold"});
  CHECK(one.shop().coatings[0].sessions == 3);
}

TEST_CASE("shelf and tins together hold the nine-in-ten amount, and the rest is left over") {
  for (const double shelf : {0.0, 0.3, 0.7, 5.0}) {
    Case stocked;
    if (shelf > 0) stocked.job.coatings[0].on_shelf = {litres(shelf / 2), litres(shelf / 2)};
    const CoatingPurchase varnish = stocked.shop().coatings.at(0);
    CHECK(varnish.on_shelf.in(litres) == Approx(shelf));
    CHECK(varnish.on_shelf + varnish.tins.bought >= varnish.nine_in_ten);
    CHECK((varnish.left_over + varnish.expected).in(litres) ==
          Approx((varnish.on_shelf + varnish.tins.bought).in(litres)));
    CHECK((varnish.tins.bought == Volume{}) == (shelf > 1));
  }
}

TEST_CASE("tins of a coating that names none are the usual ones, without prices") {
  Case metric;
  const CoatingPurchase in_litres = metric.shop().coatings.at(0);
  CHECK(in_litres.usual_sizes);
  CHECK(in_litres.sizes.size() == 6);
  CHECK(in_litres.sizes.size() == in_litres.tins.counts.size());
  // 0.82 L needed: the least volume is 0.375 + 2 x 0.25.
  CHECK(in_litres.tins.bought.in(litres) == Approx(0.875));
  CHECK(in_litres.tins.counts == std::vector<int>{2, 1, 0, 0, 0, 0});
  metric.job.units = UnitSystem::us;
  const CoatingPurchase in_quarts = metric.shop().coatings.at(0);
  CHECK(in_quarts.sizes.at(2).label == "1 qt");
  CHECK(in_quarts.tins.bought.in(us_pints) == Approx(2));
  metric.job.coatings[0].tins = {{.label = "3 L", .volume = litres(3), .price = 40.0}};
  const CoatingPurchase own = metric.shop().coatings.at(0);
  CHECK_FALSE(own.usual_sizes);
  CHECK(own.tins.counts == std::vector<int>{1});
  CHECK(own.tins.cost == Approx(40));
}

TEST_CASE("one liquid that thins and cleans is one item with both uses summed") {
  const Case one;
  const ShoppingList list = one.shop();
  const Sundry* spirits = found(list, "mineral spirits");
  REQUIRE(spirits != nullptr);
  CHECK(spirits->what == "mineral spirits, to thin and to clean");
  CHECK(spirits->unit == Sundry::Unit::litre);
  const CoatingNeed need = one.volumes().coatings[0];
  CHECK(spirits->amount == Approx(need.thinner.in(litres)*need.nine_in_ten + 3 * 0.1));
  CHECK(std::ranges::count_if(list.sundries, [](const Sundry& s) {
          return s.what.starts_with("mineral spirits");
        }) == 1);
}

TEST_CASE("two liquids are two items") {
  Case two;
  two.job.coatings[0].words.cleaner = "turpentine";
  CHECK(found(two.shop(), "mineral spirits, to thin")->what == "mineral spirits, to thin");
  CHECK(found(two.shop(), "turpentine")->what == "turpentine, to clean");
}

TEST_CASE("a waterborne coating needs no solvent and no can for oily rags") {
  Case water;
  water.job.coatings[0] = waterborne();
  water.job.systems[0].steps[0].coating = "waterborne";
  const ShoppingList list = water.shop();
  for (const Sundry& sundry : list.sundries) {
    CHECK(sundry.unit != Sundry::Unit::litre);
    CHECK(sundry.what.find("oily") == std::string::npos);
  }
  CHECK(amount(Case().shop(), "metal can") == 1);
}

TEST_CASE("sheets are rounded up once a grit, not once a sanding") {
  Case sanded;
  sanded.sand(OperationKind::sand_bare, 120, 1.5);
  sanded.sand(OperationKind::sand_between, 240, 0.6);
  sanded.sand(OperationKind::sand_between, 240, 0.3);
  sanded.sand(OperationKind::sand_bare, 180, 2.0);
  const ShoppingList list = sanded.shop();
  CHECK(amount(list, "abrasive sheets or discs, P120") == 2);
  CHECK(amount(list, "abrasive sheets or discs, P180") == 2);
  CHECK(amount(list, "abrasive sheets or discs, P240") == 1);
  CHECK(found(list, "abrasive sheets or discs, P240")->why == "for 4.6 m2");
  CHECK(amount(list, "dust masks") == 1);
}

TEST_CASE("small things follow the sessions, and nothing is listed that the job does not need") {
  const ShoppingList list = Case(4).shop();
  CHECK(amount(list, "pairs of nitrile gloves") == 4);
  CHECK(amount(list, "rags") == 8);
  CHECK(amount(list, "stirring sticks") == 4);
  CHECK(amount(list, "brush") == 1);
  CHECK(amount(list, "cloths to take the dust off") == 2);
  CHECK(found(list, "masking tape") == nullptr);
  CHECK(found(list, "dust masks") == nullptr);
  CHECK(found(list, "abrasive") == nullptr);
}

TEST_CASE("rollers serve one session, a brush serves them all") {
  Case rolled(4);
  rolled.job.data.methods[0].key = "foam_roller";
  rolled.job.systems[0].steps[0].method = "foam_roller";
  CHECK(amount(rolled.shop(), "foam roller sleeves") == 4);
}

TEST_CASE("tape is bought by the whole metre") {
  Case taped;
  taped.tape = metres(3.6);
  CHECK(amount(taped.shop(), "masking tape") == 4);
  CHECK(found(taped.shop(), "masking tape")->unit == Sundry::Unit::metre);
}
