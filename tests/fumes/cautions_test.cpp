#include "tackfree/fumes/cautions.hpp"

#include <algorithm>
#include <chrono>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

Caution text(const std::string& key, const std::string& word) {
  return {.key = key,
          .word = word,
          .hazard = "Hazard of " + key + ".",
          .consequence = "Consequence.",
          .avoid = "Avoid.",
          .origin = Origin::practice,
          .source = ""};
}

/// The small job in a room, with one text of each kind; its coats are operations 0 to 5.
struct Case {
  Job job = small_job();
  OperationList list{};
  Schedule schedule{};
  std::optional<RoomJudgement> judged{};

  Case() {
    job.data.texts.cautions = {text("waste", "NOTICE"),           text("skin_and_eyes", "CAUTION"),
                               text("solvent_vapour", "CAUTION"), text("ignition", "WARNING"),
                               text("oily_rags", "WARNING"),      text("wood_dust", "CAUTION"),
                               text("attached_house", "WARNING"), text("children", "WARNING")};
    job.coatings[0].words.cautions = {"waste", "skin_and_eyes", "solvent_vapour", "ignition",
                                      "oily_rags"};
    job.room.volume = cubic_metres(40);
    for (const CoatNeed& need : volumes().coats) {
      Operation coat;
      coat.kind = OperationKind::coat;
      coat.batch = need.batch;
      coat.step = need.step;
      coat.coat = need.coat;
      coat.side = need.side;
      list.operations.push_back(coat);
    }
  }
  JobVolumes volumes() const { return job_volumes(job, take_off(job), {1.0}); }
  std::vector<CoatEmission> released() const { return emissions(job, volumes()); }
  std::vector<RaisedCaution> result() const {
    return cautions(job, list, volumes(), released(), schedule, judged);
  }
  Mass in_a_day() const {
    return solvent_in_a_day(job, list, volumes(), released(), schedule).heaviest;
  }

  /// Starts coat after coat, `gap` apart.
  void date(std::size_t coats, std::chrono::minutes gap) {
    for (std::size_t i = 0; i < coats; ++i) {
      DatedStep step;
      step.operation = i;
      const Instant at{gap * static_cast<int>(i)};
      step.pieces = {{.begin = at, .end = at + std::chrono::minutes(30)}};
      schedule.steps.push_back(step);
    }
  }
};

const RaisedCaution* found(const std::vector<RaisedCaution>& cautions, const std::string& key) {
  const auto it =
      std::ranges::find(cautions, key, [](const RaisedCaution& c) { return c.text.key; });
  return it == cautions.end() ? nullptr : &*it;
}

/// A room in which the heaviest day comes to `share` of the explosive limit.
Volume room_for(const Case& c, double share) {
  return cubic_metres(c.in_a_day().in(grams) / (40 * share));
}

}  // namespace

TEST_CASE("the gravest word comes first and each text once") {
  Case c;
  c.job.coatings[0].words.cautions.emplace_back("waste");
  c.job.room.volume = room_for(c, 0.5);
  const std::vector<RaisedCaution> all = c.result();
  REQUIRE(all.size() == 7);
  CHECK(all.front().text.word == "DANGER");
  CHECK(all.front().text.key == "solvent_vapour");
  CHECK(all.back().text.key == "waste");
  const std::vector<std::string> order{"DANGER", "WARNING", "CAUTION", "NOTICE"};
  CHECK(std::ranges::is_sorted(all, {}, [&](const RaisedCaution& caution) {
    return std::ranges::find(order, caution.text.word) - order.begin();
  }));
}

TEST_CASE("sanding calls for the dust text, an attached house for its own") {
  Case c;
  CHECK(found(c.result(), "wood_dust") == nullptr);
  CHECK(found(c.result(), "attached_house") != nullptr);
  CHECK(found(c.result(), "children") != nullptr);
  Operation sanding;
  sanding.kind = OperationKind::sand_between;
  sanding.grit = Grit{240};
  c.list.operations.push_back(sanding);
  CHECK(found(c.result(), "wood_dust") != nullptr);
  c.job.room.attached_to_house = false;
  CHECK(found(c.result(), "attached_house") == nullptr);
}

TEST_CASE("the person's ignition sources are named in the ignition text") {
  Case c;
  CHECK_FALSE(found(c.result(), "ignition")->names_sources);
  c.job.room.ignition_sources = {"water heater", "freezer"};
  CHECK(found(c.result(), "ignition")->names_sources);
}

// Source of the two shares: International Fire Code 2018, 2404.7.3 (25 %), and the State of
// Washington's WAC 296-304-03009 (10 %).
TEST_CASE("10 % of the explosive limit is a WARNING, 25 % a DANGER") {
  Case c;
  const auto word_at = [&c](double share) {
    c.job.room.volume = room_for(c, share);
    return found(c.result(), "solvent_vapour")->text.word;
  };
  CHECK(word_at(0.099) == "CAUTION");
  CHECK(word_at(0.101) == "WARNING");
  CHECK(word_at(0.249) == "WARNING");
  CHECK(word_at(0.251) == "DANGER");
}

TEST_CASE("what has no date is set against the assumed limit in the closed room") {
  Case c;
  c.job.room.volume = room_for(c, 0.3);
  const std::vector<RaisedCaution> all = c.result();
  const RaisedCaution* vapour = found(all, "solvent_vapour");
  REQUIRE(vapour != nullptr);
  REQUIRE(vapour->undated);
  CHECK(vapour->undated->explosive_share == Approx(0.3));
  CHECK(vapour->undated->bound.in(grams_per_cubic_metre) == Approx(12));
}

TEST_CASE("without the room's volume grams are named and no share") {
  Case c;
  c.job.room.volume.reset();
  const std::vector<RaisedCaution> all = c.result();
  const RaisedCaution* vapour = found(all, "solvent_vapour");
  REQUIRE(vapour != nullptr);
  CHECK(vapour->in_a_day == c.in_a_day());
  CHECK(vapour->volume_unknown);
  CHECK_FALSE(vapour->undated);
  CHECK(vapour->text.word == "WARNING");  // nothing is known that would allow a lesser word
}

TEST_CASE("a flash point below 38 C makes the vapour text a WARNING") {
  Case c;
  c.job.room.volume = cubic_metres(4000);
  CHECK(found(c.result(), "solvent_vapour")->text.word == "CAUTION");
  c.job.coatings[0].flash_point = sourced(celsius(13), Origin::practice);
  CHECK(found(c.result(), "solvent_vapour")->text.word == "WARNING");
}

TEST_CASE("a heavy day brings the vapour text even where no coating names it") {
  Case c;
  c.job.coatings[0].flash_point.reset();
  c.job.coatings[0].words.cautions = {"waste"};
  c.job.room.volume = room_for(c, 0.05);
  CHECK(found(c.result(), "solvent_vapour") == nullptr);
  c.job.room.volume = room_for(c, 0.15);
  CHECK(found(c.result(), "solvent_vapour") != nullptr);
}

TEST_CASE("without dates the heaviest coat counts with all its sides, every batch's on one day") {
  Case c;
  const auto released = c.released();
  CHECK(c.in_a_day() / (released[0].solvent + released[1].solvent) == Approx(1));
  CHECK(released[0].solvent + released[1].solvent > released[2].solvent + released[3].solvent);
}

TEST_CASE("with dates the heaviest 24 hours count, half-open") {
  Case c;
  c.date(6, std::chrono::hours(12));
  const auto released = c.released();
  CHECK(c.in_a_day() / (released[0].solvent + released[1].solvent) == Approx(1));
  Case slow;
  slow.date(6, std::chrono::hours(24));
  Mass heaviest;
  for (const CoatEmission& emission : released) heaviest = std::max(heaviest, emission.solvent);
  CHECK(slow.in_a_day() / heaviest == Approx(1));
  Case quick;
  quick.date(6, std::chrono::minutes(30));
  Mass all;
  for (const CoatEmission& emission : released) all += emission.solvent;
  CHECK(quick.in_a_day() / all == Approx(1));
}

TEST_CASE("coats without a date still count beside dated ones") {
  Case c;
  c.date(1, std::chrono::hours(1));
  const auto released = c.released();
  // Coat 1 is half dated; coat 2 is the heaviest of the rest with both its sides.
  CHECK(c.in_a_day() / (released[2].solvent + released[3].solvent) == Approx(1));
}

// Source: 29 CFR 1910.1200, appendix B.6 (from memory): flammable liquids, Danger under 23 C,
// Warning up to 93 C.
TEST_CASE("the data sheet's own signal word is told apart from the plan's") {
  Case c;
  const auto word_at = [&c](double flash) {
    c.job.coatings[0].flash_point = sourced(celsius(flash), Origin::label);
    return found(c.result(), "ignition")->data_sheet_word;
  };
  CHECK(word_at(13) == DataSheetWord::danger);
  CHECK(word_at(22.9) == DataSheetWord::danger);
  CHECK(word_at(23) == DataSheetWord::warning);
  CHECK(word_at(61) == DataSheetWord::warning);
  // Table B.6.1 there: category 4, the last with a word, ends with 93 C.
  CHECK(word_at(93) == DataSheetWord::warning);
  CHECK_FALSE(word_at(93.1));
  CHECK_FALSE(word_at(200));
}

TEST_CASE("isocyanates are a WARNING by brush and a DANGER from the gun") {
  Case c;
  c.job.data.texts.cautions.push_back(text("isocyanates", "WARNING"));
  c.job.coatings[0].words.cautions.emplace_back("isocyanates");
  for (Operation& operation : c.list.operations) {
    operation.method = 0;
    operation.coating = 0;
  }
  CHECK(found(c.result(), "isocyanates")->text.word == "WARNING");
  c.job.data.methods[0].sprayed = true;
  const std::vector<RaisedCaution> all = c.result();
  CHECK(found(all, "isocyanates")->text.word == "DANGER");
  CHECK(found(all, "isocyanates")->sprayed_isocyanates);
}

// Source: International Fire Code 2018, 105.6.16 and 5704.3.4.4, as adopted in Minnesota 2020.
TEST_CASE(
    "more than 5 gallons of class I, or 10 of any flammable finish, call for the store's text") {
  Case c;
  c.job.data.texts.cautions.push_back(text("stored_quantity", "WARNING"));
  const auto told = [&c](double flash, double gallons) {
    c.job.coatings[0].flash_point = sourced(celsius(flash), Origin::label);
    c.job.coatings[0].on_shelf = {{us_gallons(gallons), std::nullopt}};
    return found(c.result(), "stored_quantity") != nullptr;
  };
  CHECK_FALSE(told(13, 4.9));
  CHECK(told(13, 5.1));
  CHECK(told(37.9, 5.1));
  CHECK_FALSE(told(38, 5.1));
  CHECK_FALSE(told(40, 9.9));
  CHECK(told(40, 10.1));
  CHECK(told(92.9, 10.1));
  CHECK_FALSE(told(93, 10.1));
}

TEST_CASE("the room's judgement gives the vapour text its word") {
  Case c;
  c.job.room.volume = cubic_metres(4000);
  c.date(6, std::chrono::hours(48));
  CHECK(found(c.result(), "solvent_vapour")->text.word == "CAUTION");
  RoomJudgement room;
  room.limits[0].share = 1.2;
  room.limits[1].share = 3;
  room.limits[0].least_flow = cubic_metres_per_hour(500);
  c.judged = room;
  const std::vector<RaisedCaution> all = c.result();
  const RaisedCaution* vapour = found(all, "solvent_vapour");
  CHECK(vapour->text.word == "DANGER");
  CHECK(vapour->of_room);
}

// Seen failing: each text named a respirator of its own, and a reader could choose the weakest.
TEST_CASE("the job's one respirator stands with the gravest caution on what is breathed") {
  Case c;
  c.job.data.texts.cautions.push_back(text("isocyanates", "WARNING"));
  CHECK(found(c.result(), "solvent_vapour")->respirator->kind == Respirator::Kind::organic_vapour);
  c.job.coatings[0].words.cautions.emplace_back("isocyanates");
  const std::vector<RaisedCaution> all = c.result();
  CHECK(std::ranges::count_if(
            all, [](const RaisedCaution& caution) { return caution.respirator.has_value(); }) == 1);
  CHECK(found(all, "isocyanates")->respirator->kind == Respirator::Kind::supplied_air);
}

// Seen failing: raw oil names no caution on vapour, and none was added for what it was thinned
// with.
TEST_CASE("raw oil thinned with spirits calls for the cautions on vapour and on ignition") {
  Case c;
  c.job.coatings[0].flash_point = sourced(celsius(200), Origin::practice);
  c.job.coatings[0].words.cautions = {"oily_rags"};
  c.job.data.solvents = {Solvent{.key = "mineral_spirits", .title = "mineral spirits"}};
  c.job.data.solvents[0].flash_point = sourced(celsius(39), Origin::published);
  c.job.coatings[0].thinner_mix = {
      {c.job.data.solvents[0].key, sourced(percent(100), Origin::assumed)}};
  c.job.coatings[0].first_coat_thinner = sourced(percent(10), Origin::practice);
  CHECK(found(c.result(), "solvent_vapour") != nullptr);
  CHECK(found(c.result(), "ignition") != nullptr);
  c.job.coatings[0].first_coat_thinner = sourced(percent(0), Origin::practice);
  CHECK(found(c.result(), "ignition") == nullptr);
}

// Seen failing: both stood under the days of the plan, after nine tenths of it.
TEST_CASE("spraying what burns beside a flame or in a closed room comes first, as DANGER") {
  Case c;
  c.job.data.texts.cautions.push_back(text("spraying", "WARNING"));
  c.job.data.methods[0].cautions = {"spraying"};
  c.job.data.methods[0].sprayed = true;
  c.job.coatings[0].flash_point = sourced(celsius(-10), Origin::practice);
  for (Operation& coat : c.list.operations) {
    coat.method = 0;
    coat.coating = 0;
  }
  c.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(4)};
  const std::vector<RaisedCaution> aired = c.result();
  CHECK(found(aired, "spraying")->text.word == "WARNING");
  CHECK_FALSE(found(aired, "spraying")->text.comes_first);
  c.job.room.ignition_sources = {"boiler"};
  const std::vector<RaisedCaution> beside = c.result();
  CHECK(found(beside, "spraying")->text.word == "DANGER");
  CHECK(found(beside, "spraying")->text.comes_first);
  CHECK(found(beside, "spraying")->mist->beside_source);
  CHECK_FALSE(found(beside, "spraying")->mist->room_closed);
  c.job.room.ignition_sources.clear();
  c.job.room.airing.reset();
  const std::vector<RaisedCaution> closed = c.result();
  CHECK(found(closed, "spraying")->mist->room_closed);
}

TEST_CASE("isocyanates come first even where they are brushed") {
  Case c;
  c.job.data.texts.cautions.push_back(text("isocyanates", "WARNING"));
  c.job.coatings[0].words.cautions.emplace_back("isocyanates");
  const std::vector<RaisedCaution> all = c.result();
  CHECK(found(all, "isocyanates")->text.comes_first);
  CHECK_FALSE(found(all, "waste")->text.comes_first);
}
