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
  ShoppingList shop() const {
    std::vector<std::vector<ShelfTin>> on_shelf;
    for (const Coating& coating : job.coatings) on_shelf.push_back(coating.on_shelf);
    return shopping_list(job, on_shelf, job.thinners, volumes(), list, schedule, tape);
  }
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

using Item = Sundry::Item;

const Sundry* found(const ShoppingList& list, Item item, std::optional<Grit> grit = {}) {
  for (const Sundry& sundry : list.sundries)
    if (sundry.item == item && sundry.grit == grit) return &sundry;
  return nullptr;
}

double amount(const ShoppingList& list, Item item, std::optional<Grit> grit = {}) {
  const Sundry* sundry = found(list, item, grit);
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
  one.schedule.unplaced.push_back({.operation = 0});
  one.schedule.unplaced.push_back({.operation = 1});
  CHECK(one.shop().coatings[0].sessions == 3);
}

TEST_CASE("shelf and tins together hold the nine-in-ten amount, and the rest is left over") {
  for (const double shelf : {0.0, 0.3, 0.7, 5.0}) {
    Case stocked;
    if (shelf > 0)
      stocked.job.coatings[0].on_shelf = {{litres(shelf / 2), {}}, {litres(shelf / 2), {}}};
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
  CHECK(metric.shop().thinners.at(0).sizes.at(1).label == "1 qt");
  CHECK(in_quarts.tins.bought.in(us_pints) == Approx(2));
  metric.job.coatings[0].tins = {{.label = "3 L", .volume = litres(3), .price = 40.0}};
  const CoatingPurchase own = metric.shop().coatings.at(0);
  CHECK_FALSE(own.usual_sizes);
  CHECK(own.tins.counts == std::vector<int>{1});
  CHECK(own.tins.cost == Approx(40));
}

TEST_CASE("a coating that serves in two systems and several steps is bought once") {
  Case one;
  Case two;
  FinishSystem other = two.job.systems[0];
  other.name = "other";
  other.steps[0].coats = 2;
  two.job.systems.push_back(other);
  two.job.batches.push_back(two.job.batches[0]);
  two.job.batches[1].name = "second";
  two.job.batches[1].system = "other";
  two.job.parts.push_back(two.job.parts[0]);
  two.job.parts[1].name = "second top";
  two.job.parts[1].batch = "second";
  const ShoppingList both = two.shop();
  REQUIRE(both.coatings.size() == 1);
  CHECK(both.coatings[0].on_surfaces > one.shop().coatings[0].on_surfaces * 1.5);
  CHECK(both.coatings[0].on_shelf + both.coatings[0].tins.bought >= both.coatings[0].nine_in_ten);
  REQUIRE(both.thinners.size() == 1);
}

namespace {

/// A litre opened on `opened`, of a coating that keeps for 30 days and is first used on 5 April.
CoatingPurchase with_open_tin(const char* opened, bool placed) {
  Case one;
  Coating& varnish = one.job.coatings[0];
  varnish.tin_keeps.value = days(30);
  varnish.on_shelf = {{litres(1), parse_date(opened)}, {litres(0.25), {}}};
  one.schedule.span.begin = *parse_instant("2027-04-01T08:00Z");
  if (placed) {
    Operation coat;
    coat.coating = 0;
    one.list.operations = {Operation{}, coat};
    const auto step = [](std::size_t operation, const char* at) {
      DatedStep dated;
      dated.operation = operation;
      dated.pieces = {{*parse_instant(at), *parse_instant(at) + Minutes(30)}};
      return dated;
    };
    one.schedule.steps = {step(0, "2027-04-02T08:00Z"), step(1, "2027-04-05T08:00Z")};
  }
  return one.shop().coatings.at(0);
}

}  // namespace

TEST_CASE("a tin that is too old on the day of its first coat is set aside and told") {
  const CoatingPurchase fresh = with_open_tin("2027-03-06", true);
  CHECK(fresh.too_old.empty());
  CHECK(fresh.on_shelf.in(litres) == Approx(1.25));
  CHECK(fresh.tins.bought == Volume{});
  const CoatingPurchase old = with_open_tin("2027-03-05", true);
  REQUIRE(old.too_old.size() == 1);
  CHECK(old.too_old[0].volume == litres(1));
  CHECK(old.on_shelf.in(litres) == Approx(0.25));
  CHECK(old.tins.bought > Volume{});
  CHECK((old.left_over + old.expected).in(litres) ==
        Approx((old.on_shelf + old.tins.bought).in(litres)));
}

TEST_CASE("without a date for its first coat a tin is judged on the first day of the plan") {
  CHECK(with_open_tin("2027-03-02", false).too_old.empty());
  CHECK(with_open_tin("2027-03-01", false).too_old.size() == 1);
}

TEST_CASE("sheets are rounded up once a grit, not once a sanding") {
  Case sanded;
  sanded.sand(OperationKind::sand_bare, 120, 1.5);
  sanded.sand(OperationKind::sand_between, 240, 0.6);
  sanded.sand(OperationKind::sand_between, 240, 0.3);
  sanded.sand(OperationKind::sand_bare, 180, 2.0);
  const ShoppingList list = sanded.shop();
  CHECK(amount(list, Item::abrasive, Grit{120}) == 2);
  CHECK(amount(list, Item::abrasive, Grit{180}) == 2);
  CHECK(amount(list, Item::abrasive, Grit{240}) == 1);
  CHECK(found(list, Item::abrasive, Grit{240})->area.in(square_metres) == Approx(4.6));
  CHECK(amount(list, Item::dust_mask) == 1);
}

TEST_CASE("a waterborne coating needs no can for oily rags") {
  Case water;
  water.job.coatings[0] = waterborne();
  water.job.systems[0].steps[0].coating = "waterborne";
  CHECK(found(water.shop(), Item::lidded_can) == nullptr);
  CHECK(water.shop().thinners.empty());
  CHECK(amount(Case().shop(), Item::lidded_can) == 1);
}

TEST_CASE("small things follow the sessions, and nothing is listed that the job does not need") {
  const ShoppingList list = Case(4).shop();
  CHECK(amount(list, Item::gloves) == 4);
  CHECK(amount(list, Item::rag) == 8);
  CHECK(amount(list, Item::stirring_stick) == 4);
  CHECK(amount(list, Item::applicator) == 1);
  CHECK(amount(list, Item::dusting_cloth) == 2);
  CHECK(found(list, Item::masking_tape) == nullptr);
  CHECK(found(list, Item::dust_mask) == nullptr);
  CHECK(found(list, Item::abrasive) == nullptr);
}

TEST_CASE("rollers serve one session, a brush serves them all") {
  Case rolled(4);
  rolled.job.data.methods[0].applicator_each_session = true;
  CHECK(amount(rolled.shop(), Item::applicator) == 4);
  CHECK(amount(Case(4).shop(), Item::applicator) == 1);
}

TEST_CASE("tape is listed as long as it is") {
  Case taped;
  taped.tape = metres(3.6);
  CHECK(amount(taped.shop(), Item::masking_tape) == Approx(3.6));
  CHECK(found(taped.shop(), Item::masking_tape)->unit() == Sundry::Unit::metre);
}
