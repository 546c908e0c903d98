#include "tackfree/shopping/tin_purchase.hpp"

#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

const Sourced<std::vector<TinSize>> usual{
    {{.label = "1 L", .volume = litres(1), .price = {}}}, Origin::practice, {}};

}  // namespace

TEST_CASE("a tin is too old on the day after its last good one, and an undated one never") {
  const std::vector<ShelfTin> shelf{{litres(1), parse_date("2027-01-01")},
                                    {litres(2), parse_date("2027-01-11")},
                                    {litres(3), {}}};
  CHECK(too_old_on(*parse_date("2027-01-31"), days(30), shelf).empty());
  const auto one = too_old_on(*parse_date("2027-02-01"), days(30), shelf);
  REQUIRE(one.size() == 1);
  CHECK(one[0].volume == litres(1));
  CHECK(too_old_on(*parse_date("2030-02-01"), days(30), shelf).size() == 2);
}

TEST_CASE("a tin opened after the first use is not too old") {
  CHECK(too_old_on(*parse_date("2027-01-01"), days(1), {{litres(1), parse_date("2027-03-01")}})
            .empty());
}

TEST_CASE("own sizes go before the usual ones, and the rest is what is left over") {
  TinPurchase purchase;
  purchase.expected = litres(1.2);
  purchase.nine_in_ten = litres(1.5);
  purchase.on_shelf = litres(0.6);
  choose_purchase(purchase, {}, usual);
  CHECK(purchase.usual_sizes);
  CHECK(purchase.tins.counts == std::vector<int>{1});
  CHECK(purchase.left_over.in(litres) == Approx(0.4));
  choose_purchase(purchase, {{.label = "half", .volume = litres(0.5), .price = {}}}, usual);
  CHECK_FALSE(purchase.usual_sizes);
  CHECK(purchase.tins.counts == std::vector<int>{2});
}

// A gallon can of a tinted finish is often filled to less: common practice, no source.
TEST_CASE("a tin counts with its fill, not with its name") {
  TinPurchase purchase;
  purchase.expected = purchase.nine_in_ten = us_gallons(0.98);
  choose_purchase(purchase, {{.label = "1 gal", .volume = us_gallons(0.95), .price = {}}}, usual);
  CHECK(purchase.tins.counts == std::vector<int>{2});
}
