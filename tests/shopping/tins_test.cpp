#include "tackfree/shopping/tins.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <random>
#include <stdexcept>
#include <tuple>

#include "effort.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

TinSize tin(double ml, std::optional<double> price = {}) {
  return {.label = "tin", .volume = millilitres(ml), .price = price};
}

/// Cost (0 without prices), millilitres and number of tins: less is better, in this order.
using Rank = std::tuple<long, long, long>;

/// Whole-number sizes and prices, so that ranks compare exactly.
struct Offer {
  std::vector<long> ml;
  std::vector<long> price;  ///< empty: no prices
  std::vector<TinSize> sizes() const {
    std::vector<TinSize> result;
    for (std::size_t i = 0; i < ml.size(); ++i)
      result.push_back(
          tin(static_cast<double>(ml[i]),
              price.empty() ? std::nullopt : std::optional(static_cast<double>(price[i]) / 100)));
    return result;
  }
  Rank add(Rank rank, std::size_t i, long count) const {
    return {std::get<0>(rank) + (price.empty() ? 0 : count * price[i]),
            std::get<1>(rank) + count * ml[i], std::get<2>(rank) + count};
  }
};

/// Tries every number of every tin.
void try_all(const Offer& offer, long need, std::size_t size, Rank sum, std::optional<Rank>& best) {
  if (std::get<1>(sum) >= need) {
    if (!best || sum < *best) best = sum;
    return;
  }
  if (size == offer.ml.size()) return;
  for (long count = 0; std::get<1>(sum) + (count - 1) * offer.ml[size] < need; ++count)
    try_all(offer, need, size + 1, offer.add(sum, size, count), best);
}

Rank best_of_all(const Offer& offer, long need) {
  std::optional<Rank> best;
  try_all(offer, need, 0, {0, 0, 0}, best);
  return best.value_or(Rank{0, 0, 0});
}

Rank rank_of(const Offer& offer, const TinChoice& choice) {
  Rank rank{0, 0, 0};
  for (std::size_t i = 0; i < choice.counts.size(); ++i)
    rank = offer.add(rank, i, choice.counts[i]);
  return rank;
}

}  // namespace

TEST_CASE("no choice of tins is cheaper than the chosen one, by trying them all") {
  std::mt19937 random(20270410);
  const auto between = [&random](long low, long high) {
    return low + static_cast<long>(random() % static_cast<unsigned long>(high - low + 1));
  };
  for (int trial = 0; trial < testing::cases(600); ++trial) {
    Offer offer;
    const long sizes = between(1, 4);
    for (long i = 0; i < sizes; ++i) offer.ml.push_back(between(60, 700));
    // Few different prices, so that ties are common.
    if (trial % 3 != 0)
      for (long i = 0; i < sizes; ++i) offer.price.push_back(100 * between(1, 12));
    const long need = between(1, 2500);
    const TinChoice choice = choose_tins(millilitres(static_cast<double>(need)), offer.sizes());
    CAPTURE(trial);
    CAPTURE(need);
    REQUIRE(choice.bought.in(millilitres) >= static_cast<double>(need) - 1e-6);
    REQUIRE(rank_of(offer, choice) == best_of_all(offer, need));
  }
}

TEST_CASE("needs of hundreds of tins are chosen exactly too") {
  std::mt19937 random(7);
  for (int trial = 0; trial < testing::cases(60); ++trial) {
    Offer offer;
    for (int i = 0; i < 3; ++i) offer.ml.push_back(5 + static_cast<long>(random() % 16));
    if (trial % 2 == 0)
      for (int i = 0; i < 3; ++i)
        offer.price.push_back(100 * (1 + static_cast<long>(random() % 9)));
    const long need = 900 + static_cast<long>(random() % 900);
    const TinChoice choice = choose_tins(millilitres(static_cast<double>(need)), offer.sizes());
    CAPTURE(trial);
    REQUIRE(rank_of(offer, choice) == best_of_all(offer, need));
  }
}

TEST_CASE("without prices the least volume is bought, then the fewest tins") {
  const TinChoice choice =
      choose_tins(millilitres(950), {tin(250), tin(500), tin(1000), tin(2500)});
  CHECK(choice.bought.in(millilitres) == Approx(1000));
  CHECK(choice.counts == std::vector<int>{0, 0, 1, 0});
  CHECK_FALSE(choice.priced);
  CHECK(choice.cost == 0.0);
}

TEST_CASE("one large tin is bought where it costs less than the small ones") {
  const TinChoice choice =
      choose_tins(millilitres(1100), {tin(250, 9.5), tin(1000, 24), tin(2500, 30)});
  CHECK(choice.counts == std::vector<int>{0, 0, 1});
  CHECK(choice.priced);
  CHECK(choice.cost == Approx(30));
}

TEST_CASE("a cent decides") {
  const std::vector<TinSize> sizes{tin(500, 12.49), tin(1000, 24.97)};
  CHECK(choose_tins(millilitres(1000), sizes).counts == std::vector<int>{0, 1});
}

TEST_CASE("one size without a price makes the choice go by volume") {
  const TinChoice choice = choose_tins(millilitres(900), {tin(1000), tin(5000, 1.0)});
  CHECK(choice.counts == std::vector<int>{1, 0});
  CHECK_FALSE(choice.priced);
}

TEST_CASE("equal sums of prices are equal whatever the order they are added in") {
  // 3 x 0.1 and 0.3 differ as binary fractions; the fewer tins must win.
  CHECK(choose_tins(millilitres(300), {tin(100, 0.1), tin(300, 0.3)}).counts ==
        std::vector<int>{0, 1});
}

TEST_CASE("a need of exactly one tin buys one, a millilitre more buys two") {
  CHECK(choose_tins(litres(1), {{.label = "1 L", .volume = litres(1), .price = {}}}).counts[0] ==
        1);
  CHECK(
      choose_tins(litres(1.001), {{.label = "1 L", .volume = litres(1), .price = {}}}).counts[0] ==
      2);
}

TEST_CASE("nothing is bought when the shelf holds enough") {
  const TinChoice choice = choose_tins(litres(-0.4), {tin(500, 5.0)});
  CHECK(choice.counts == std::vector<int>{0});
  CHECK(choice.bought == Volume{});
  CHECK(choice.cost == 0.0);
}

TEST_CASE("a hundred thousand litres is chosen without a table that long") {
  const std::vector<TinSize> sizes{{.label = "1 qt", .volume = us_quarts(1), .price = 19.99},
                                   {.label = "1 gal", .volume = us_gallons(1), .price = 61.5}};
  const TinChoice choice = choose_tins(litres(100000), sizes);
  CHECK(choice.bought >= litres(100000));
  CHECK(choice.bought < litres(100000) + us_gallons(10));
}

TEST_CASE("offers without a countable tin are refused") {
  CHECK_THROWS_AS(choose_tins(litres(1), {}), std::invalid_argument);
  CHECK_THROWS_AS(choose_tins(litres(1), {tin(0.5)}), std::invalid_argument);
}
