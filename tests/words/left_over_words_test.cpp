#include "tackfree/words/left_over_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a tin is told with the months of its opening and its end") {
  const Figures figures(small_job({}, UnitSystem::metric));
  const TinLeft open{litres(0.65), parse_date("2027-04-08"), parse_date("2028-04-07"), false};
  CHECK(tin_left_text(open, figures) ==
        "650 ml, opened in April 2027, keeps until about April 2028");
  CHECK(tin_left_text({.left = litres(1), .full = true}, figures) == "1.00 L, not opened");
  CHECK(tin_left_text({.left = litres(1)}, figures) == "1.00 L");
  TinLeft old = open;
  old.too_old = true;
  CHECK(tin_left_text(old, figures) == "650 ml, opened in April 2027: past its time");
}

TEST_CASE(
    "what is left of a coating is told with what nine jobs out of ten leave, alike tins once") {
  const Figures figures(small_job({}, UnitSystem::metric));
  CoatingLeft left{.coating = 0, .expected = litres(2.65), .nine_in_ten = litres(2.2)};
  left.tins = {{litres(0.65), parse_date("2027-04-08"), parse_date("2028-04-07"), false},
               {.left = litres(1), .full = true},
               {.left = litres(1), .full = true}};
  CHECK(coating_left_text(left, figures) ==
        "likely 2.65 L; in nine jobs out of ten at least 2.20 L. In the tins: 650 ml, opened in "
        "April 2027, keeps until about April 2028; 2 of 1.00 L, not opened.");
  left.tins.resize(1);
  left.nine_in_ten = {};
  CHECK(coating_left_text(left, figures) ==
        "likely 2.65 L; perhaps nothing. In one tin: 650 ml, opened in April 2027, keeps until "
        "about April 2028.");
  CHECK(coating_left_text({}, figures) == "likely nothing.");
}

TEST_CASE("of a thinner the clean and the dirty are told apart") {
  const Figures figures(small_job({}, UnitSystem::metric));
  CHECK(thinner_left_text({"mineral spirits", litres(0.4), litres(0.3)}, figures) ==
        "likely 400 ml. It does not spoil. Another 300 ml is dirty from washing tools.");
  CHECK(thinner_left_text({"mineral spirits", {}, {}}, figures) == "likely nothing.");
}
