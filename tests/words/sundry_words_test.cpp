#include "tackfree/words/sundry_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

using Item = Sundry::Item;

SundryText said(const Sundry& sundry, UnitSystem units = UnitSystem::metric) {
  Job job = small_plan({}, units).job;
  job.data.methods.at(0).applicator = "foam sleeves";
  job.data.methods.at(0).applicator_each_session = sundry.cleanings > 0;
  job.coatings.at(0).words.wipe_with = "a tack cloth";
  job.data.touches = {{.key = "wax", .title = "wax", .rate = {}, .with = "paste wax", .how = {}}};
  return sundry_text(sundry, job, Figures(job));
}

}  // namespace

TEST_CASE("an applicator says for which coating it is, and how often it is taken up") {
  const Sundry brush{
      .item = Item::applicator, .amount = 1, .coating = 0, .method = 0, .sessions = 3};
  CHECK(said(brush).what == "foam sleeves, for varnish");
  CHECK(said(brush).why == "cleaned after each of 3 sessions");
  Sundry paused = brush;
  paused.cleanings = 2;
  Job job = small_plan().job;
  job.data.methods.at(0).applicator_each_session = false;
  CHECK(sundry_text(paused, job, Figures(job)).why ==
        "cleaned after each of 3 sessions, and 2 times in a pause");
  Sundry sleeves = brush;
  sleeves.sessions = 1;
  sleeves.cleanings = 2;
  CHECK(said(sleeves).why == "one a session, for 1 session, and 2 for after a pause");
}

TEST_CASE("abrasives say what they are for in the units of the job") {
  Sundry abrasive{.item = Item::abrasive, .amount = 2, .grit = Grit{120}, .area = square_metres(2)};
  CHECK(said(abrasive).what == "abrasive sheets or discs, P120");
  CHECK(said(abrasive).why == "for 2.00 m\u00b2");
  CHECK(said(abrasive, UnitSystem::us).why == "for 21.5 sq ft");
  abrasive.amount = 1;
  CHECK(said(abrasive).what == "abrasive sheet or disc, P120");
}

TEST_CASE("tape is bought by the whole metre, or foot in a US job") {
  const Sundry tape{.item = Item::masking_tape, .amount = 3.6};
  CHECK(said(tape).shown == "4 m");
  CHECK(said(tape).amount == 4);
  CHECK(said(tape, UnitSystem::us).shown == "12 ft");
  CHECK(said(tape, UnitSystem::us).amount == doctest::Approx(12 * 0.3048));
}

TEST_CASE("one of a thing is said as one") {
  CHECK(said({.item = Item::gloves, .amount = 1}).what == "pair of nitrile gloves");
  CHECK(said({.item = Item::gloves, .amount = 4}).what == "pairs of nitrile gloves");
  CHECK(said({.item = Item::rag, .amount = 4, .sessions = 2, .each_session = 2}).why ==
        "2 a session, for 2 sessions");
  CHECK(said({.item = Item::dust_mask, .amount = 2, .work = hours(12.25)}).why ==
        "for 12.3 h of sanding");
}

TEST_CASE("everything says what it is for, each in words of its own") {
  std::set<std::string> names;
  for (int item = 0; item <= static_cast<int>(Item::strainer); ++item) {
    const SundryText text = said({.item = static_cast<Item>(item),
                                  .amount = 2,
                                  .coating = 0,
                                  .method = 0,
                                  .grit = Grit{80},
                                  .touch = 0});
    CHECK_FALSE(text.why.empty());
    names.insert(text.what);
  }
  CHECK(names.size() == static_cast<std::size_t>(Item::strainer) + 1);
}

TEST_CASE("one cloth is not several") {
  const Sundry cloth{.item = Item::dusting_cloth, .amount = 1, .coating = 0};
  CHECK(said(cloth).what == "cloth to take the dust off");
}
