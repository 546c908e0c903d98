#include "tackfree/words/short_warnings.hpp"

#include <algorithm>

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

RaisedCaution raised(const char* key, const char* word) {
  RaisedCaution caution;
  caution.text.key = key;
  caution.text.word = word;
  caution.text.in_short = std::string(key) + ", in short.";
  return caution;
}

std::vector<std::string> keys_of(const Plan& plan) {
  std::vector<std::string> keys;
  for (const ShortWarning& warning : short_warnings(plan)) keys.push_back(warning.key);
  return keys;
}

}  // namespace

TEST_CASE("each danger and warning has its line, a caution or notice none") {
  Plan plan = small_plan();
  plan.cautions = {raised("isocyanates", "DANGER"), raised("children", "WARNING"),
                   raised("skin_and_eyes", "CAUTION"), raised("waste", "NOTICE")};
  const auto all = short_warnings(plan);
  REQUIRE(all.size() == 2);
  CHECK(all[0].word == "DANGER");
  CHECK(all[0].text == "isocyanates, in short.");
  CHECK(all[1].word == "WARNING");
}

TEST_CASE("the gravest stands first: the word, then what kills at once") {
  Plan plan = small_plan();
  plan.cautions = {raised("wood_dust", "WARNING"), raised("oily_rags", "WARNING"),
                   raised("ignition", "WARNING"), raised("spraying", "DANGER")};
  CHECK(keys_of(plan) ==
        std::vector<std::string>{"spraying", "ignition", "oily_rags", "wood_dust"});
}

TEST_CASE("what the job has that lights vapour is named, bounded where there is much of it") {
  Plan plan = small_plan();
  plan.job.room.ignition_sources = {"water heater", "freezer"};
  const FlammableTime time{1, {at("2027-04-10T14:00:00Z"), at("2027-04-11T02:15:00Z")}};
  CHECK(off_words(plan, time) ==
        "Before you open the tin, turn off the water heater and the freezer. Leave them off until "
        "Sat Apr 10, 11:00 pm by this estimate and until the smell is gone, then start them by "
        "their instructions.");
  plan.cautions = {raised("ignition", "WARNING")};
  plan.cautions[0].names_sources = true;
  CHECK(holds(short_warnings(plan)[0].text, "turn off the water heater and the freezer before"));
  plan.job.data.methods[0].sprayed = true;
  CHECK(
      off_words(plan, time)
          .starts_with("Before you open the tin, turn off the water heater and the freezer, and do "
                       "not spray in one room with them. Leave them off until"));
  plan.job.data.methods[0].sprayed = false;
  plan.job.room.ignition_sources = {"a", "b", "c", "d", "e", "f"};
  CHECK(holds(off_words(plan, time), "the a, the b, the c, the d and 2 more that you listed."));
}

TEST_CASE("vapour that may explode and a heater that may light it come before all else") {
  Plan plan = judged_plan();
  RaisedCaution vapour = raised("solvent_vapour", "DANGER");
  vapour.of_room = true;
  plan.cautions = {raised("spraying", "DANGER"), vapour};
  plan.room->limits[0].share = 1.2;
  plan.heater_clash = HeaterClash{HeaterKind::flame, {}};
  CHECK(keys_of(plan) == std::vector<std::string>{"explosion", "heater", "spraying"});
  plan.heater_clash->kind.reset();
  CHECK(short_warnings(plan).back().key == "heater");
  CHECK(short_warnings(plan).back().word == "WARNING");
}

TEST_CASE("too much vapour to breathe is told with the airing that would serve") {
  Plan plan = judged_plan();
  plan.cautions = {raised("solvent_vapour", "WARNING")};
  plan.cautions[0].of_room = true;
  CHECK(short_warnings(plan)[0].text ==
        "Too much vapour to breathe, by estimate: keep it open to outdoors while coating, then "
        "open for "
        "5 h.");
}
