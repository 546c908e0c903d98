#include "tackfree/plan/shelf_update.hpp"

#include "tackfree/plan/make_work_at_hand.hpp"
#include "tackfree/plan/stock.hpp"

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;
using doctest::Approx;

/// A tin that a person put there.
SharedTin shared_tin(const std::string& product, const std::string& class_key, double amount) {
  return {.product = product, .class_key = class_key, .volume = {litres(amount), "as written"}};
}

/// A job with that id, the shelf and the log, and the shelf after it.
struct SharingJob {
  Job job;
  WorkAtHand work;

  SharingJob(const std::string& id, const Shelf& shelf, std::vector<LogEntry> entries)
      : job(logged_job(std::move(entries))) {
    job.id = id;
    job.shelf = shelf;
    Problems problems;
    auto made = make_work_at_hand(job, instant("2027-04-08T20:00Z"), problems);
    REQUIRE(made);
    work = std::move(*made);
  }
  Shelf after() const { return shelf_after(*job.shelf, work.job, work.list); }
  double in_tins() const {
    Volume sum;
    const auto tins = tins_left(work.job, work.list);
    for (const ShelfTin& tin : tins.at(0)) sum += tin.volume;
    return sum.in(litres);
  }
  /// What a coat of 0.11 L in all took: its share of coating, and what the brush kept.
  double took() const {
    const Operation* op = operation_called(work.list, back_1);
    return 0.11 * (op->liquid / op->mixed) +
           work.job.data.methods.at(*op->method).kept_by_tool.value.in(litres);
  }
};

const std::string varnish_class = "oil_polyurethane";

LogEntry first_coat(int id = 1) { return coat(id, back_1, "2027-04-06T19:00Z", 0.11); }

LogEntry bought_tin(int id, double size) {
  LogEntry line = entry(id, LogKind::tin, "", "2027-04-05T12:00Z");
  line.tin = TinEvent::bought;
  line.coating = "finish";
  line.amount = litres(size);
  return line;
}

/// What a job with that id finds there of the varnish.
double found_by(const std::string& id, const Shelf& shelf) {
  return SharingJob(id, shelf, {}).in_tins();
}

}  // namespace

TEST_CASE("a job counts the shelf's tins of its coating alone, whatever the case of the name") {
  const Shelf shelf{.tins = {shared_tin("Finish", varnish_class, 1),
                             shared_tin("finish", "shellac", 2),
                             shared_tin("other finish", varnish_class, 4)}};
  CHECK(found_by("first", shelf) == Approx(1));
}

TEST_CASE("what a job took of a shared tin is gone for the next, and not twice for itself") {
  const Shelf before{.tins = {shared_tin("finish", varnish_class, 1)}};
  const SharingJob first("first", before, {first_coat()});
  const Shelf after = first.after();
  REQUIRE(after.tins.size() == 1);
  CHECK(after.tins[0].volume.text == "as written");
  CHECK_FALSE(after.tins[0].opened_on);
  REQUIRE(after.tins[0].takings.size() == 1);
  CHECK(after.tins[0].takings[0].job == "first");
  CHECK(after.tins[0].takings[0].amount.volume.in(litres) == Approx(first.took()));
  CHECK(iso_date(after.tins[0].takings[0].opened_on.value()) == "2027-04-06");
  CHECK(found_by("next", after) == Approx(1 - first.took()));
  const SharingJob again("first", after, {first_coat()});
  CHECK(again.in_tins() == Approx(1 - first.took()));
  const Shelf twice = again.after();
  REQUIRE(twice.tins[0].takings.size() == 1);
  CHECK(twice.tins[0].takings[0].amount.volume == after.tins[0].takings[0].amount.volume);
  // The next job knows since when it is open.
  const SharingJob next("next", after, {});
  CHECK(iso_date(tins_left(next.work.job, next.work.list)[0][0].opened_on.value()) == "2027-04-06");
}

TEST_CASE("what a job bought and did not use is left there, once") {
  const SharingJob first("first", {}, {bought_tin(1, 1), bought_tin(2, 0.5), first_coat(3)});
  const Shelf after = first.after();
  REQUIRE(after.tins.size() == 2);
  CHECK(after.tins[0].left_by == "first");
  CHECK(after.tins[0].number == 1);
  CHECK(after.tins[0].volume.volume.in(litres) == Approx(1 - first.took()));
  CHECK(after.tins[1].volume.volume.in(litres) == Approx(0.5));
  CHECK_FALSE(after.tins[1].opened_on);
  CHECK(found_by("next", after) == Approx(1.5 - first.took()));
  const SharingJob again("first", after, {bought_tin(1, 1), bought_tin(2, 0.5), first_coat(3)});
  CHECK(again.in_tins() == Approx(1.5 - first.took()));
  CHECK(again.after().tins.size() == 2);
  CHECK(found_by("next", again.after()) == Approx(1.5 - first.took()));
}

TEST_CASE("of two jobs at one tin each sees what the other took, in whatever order they write") {
  const SharingJob first("first", {}, {bought_tin(1, 1), first_coat(2)});
  const SharingJob second("second", first.after(), {first_coat()});
  const Shelf both = second.after();
  REQUIRE(both.tins.size() == 1);
  CHECK(found_by("third", both) == Approx(1 - 2 * first.took()));
  // The first job's own tin has less in it than its log alone says.
  const SharingJob again("first", both, {bought_tin(1, 1), first_coat(2)});
  CHECK(again.in_tins() == Approx(1 - 2 * first.took()));
  CHECK(found_by("third", again.after()) == Approx(1 - 2 * first.took()));
}

TEST_CASE("a tin that another job opened is open for the one that left it, on that job's word") {
  const Shelf left = SharingJob("first", {}, {bought_tin(1, 1)}).after();
  const Shelf both = SharingJob("second", left, {first_coat()}).after();
  const SharingJob first("first", both, {bought_tin(1, 1)});
  CHECK(iso_date(tins_left(first.work.job, first.work.list)[0][0].opened_on.value()) ==
        "2027-04-06");
  const Shelf after = first.after();
  CHECK_FALSE(after.tins.at(0).opened_on);
  CHECK(after.tins[0].takings.at(0).opened_on);
  // What the other job takes back is not open any more.
  CHECK_FALSE(SharingJob("second", after, {}).after().tins.at(0).takings.size() > 0);
}

TEST_CASE("what is thrown away, or taken back in the log, goes from the shelf too") {
  const SharingJob first("first", {}, {bought_tin(1, 1)});
  LogEntry waste = bought_tin(2, 1);
  waste.kind = LogKind::waste;
  waste.tin.reset();
  CHECK(SharingJob("first", first.after(), {bought_tin(1, 1), waste}).after().tins.empty());
  CHECK(SharingJob("first", first.after(), {}).after().tins.empty());
  const Shelf persons{.tins = {shared_tin("finish", varnish_class, 1)}};
  const SharingJob took("first", persons, {first_coat()});
  CHECK(SharingJob("first", took.after(), {}).after().tins.at(0).takings.empty());
}

TEST_CASE("a tin put on the shelf later is not thought used, and one past its time is used last") {
  Shelf shelf = SharingJob("first", {}, {bought_tin(1, 1), first_coat(2)}).after();
  const double written = shelf.tins.at(0).volume.volume.in(litres);
  SharedTin later = shared_tin("finish", varnish_class, 1);
  later.opened_on = parse_date("2027-04-01");
  shelf.tins.push_back(later);
  const Shelf after = SharingJob("first", shelf, {bought_tin(1, 1), first_coat(2)}).after();
  CHECK(after.tins.at(0).volume.volume.in(litres) == Approx(written));
  CHECK(after.tins.at(1).takings.empty());
  Shelf old{.tins = {shared_tin("finish", varnish_class, 1)}};
  old.tins[0].opened_on = parse_date("2025-04-01");
  CHECK(SharingJob("first", old, {bought_tin(1, 1), first_coat(2)})
            .after()
            .tins.at(0)
            .takings.empty());
  CHECK(SharingJob("first", old, {first_coat()}).after().tins.at(0).takings.size() == 1);
}

TEST_CASE("a thinner on the shelf is counted and written as a coating is") {
  const Shelf shelf{.tins = {shared_tin("mineral spirits", "", 1)}};
  const SharingJob first("first", shelf, {first_coat()});
  const double cleaned = first.work.job.data.shop.cleaner_per_session.value.in(litres);
  const auto left = thinners_left(first.work.job, first.work.list);
  REQUIRE(left.size() == 1);
  CHECK(left[0].on_shelf.at(0).volume.in(litres) < 1 - cleaned + 1e-9);
  const Shelf after = first.after();
  REQUIRE(after.tins[0].takings.size() == 1);
  CHECK(after.tins[0].takings[0].amount.volume.in(litres) ==
        Approx(1 - left[0].on_shelf[0].volume.in(litres)));
}

TEST_CASE("tins of no use to the job stay as they are") {
  Shelf shelf{.tins = {shared_tin("milk paint", "shellac", 1), shared_tin("finish", "shellac", 2)}};
  shelf.tins[0].note = "for the fence";
  shelf.tins[0].takings = {{"fence", {litres(0.2), "0.2 L"}, {}}};
  const Shelf after = SharingJob("first", shelf, {bought_tin(1, 1), first_coat(2)}).after();
  REQUIRE(after.tins.size() == 3);
  CHECK(after.tins[0].note == "for the fence");
  CHECK(after.tins[0].takings.at(0).job == "fence");
  CHECK(after.tins[1].volume.text == "as written");
}

}  // namespace tackfree
