#include "tackfree/shopping/tins.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numeric>
#include <stdexcept>
#include <tuple>

namespace tackfree {
namespace {

/// A whole number of millilitres (or of the tins' common measure of them).
using Amount = std::int64_t;

/// What a choice comes to, in the order in which choices are compared.
struct Total {
  std::int64_t cost = 0;  ///< in ten-thousandths, so that equal sums are equal
  Amount volume = 0;
  std::int64_t tins = 0;
  friend bool operator<(const Total& a, const Total& b) {
    return std::tie(a.cost, a.volume, a.tins) < std::tie(b.cost, b.volume, b.tins);
  }
  friend Total operator+(const Total& a, const Total& b) {
    return {.cost = a.cost + b.cost, .volume = a.volume + b.volume, .tins = a.tins + b.tins};
  }
};

// Sizes are round numbers of millilitres that a change of unit may have moved by a trifle.
constexpr double trifle = 1e-6;
Amount millilitres_down(Volume v) {
  return static_cast<Amount>(std::floor(v.in(millilitres) + trifle));
}
Amount millilitres_up(Volume v) { return static_cast<Amount>(std::ceil(v.in(millilitres)-trifle)); }

/// The longest table that is filled, one entry for each measure of the need.
constexpr Amount longest_table = 32'000'000;

/// The size of least price a volume, the largest of these: never beaten by as much of another.
std::size_t best_value(const std::vector<Total>& sizes) {
  const auto worse = [](const Total& a, const Total& b) {
    const auto left = static_cast<long double>(a.cost) * static_cast<long double>(b.volume);
    const auto right = static_cast<long double>(b.cost) * static_cast<long double>(a.volume);
    return left != right ? left > right : a.volume < b.volume;
  };
  return static_cast<std::size_t>(std::ranges::max_element(sizes, worse) - sizes.begin());
}

/// How many tins of the best value can be bought outright, the rest still being chosen exactly.
/// Of any b tins of other sizes, b the volume of the best one, some together hold a multiple of b
/// (two of the b + 1 sums of the first 0, 1, ... b of them leave the same remainder). As many
/// litres in best-value tins cost no more, and where they cost the same they are no more tins, the
/// best value being the largest at its price. So one of the best choices has fewer than b tins of
/// other sizes, less than b x the largest of these altogether, and the best value holds the rest.
/// Only needs that would pass the longest table (with US tins: over 30 000 L) are cut shorter.
Amount bought_outright(Amount need, const std::vector<Total>& sizes, std::size_t best) {
  Amount largest_other = 0;
  for (std::size_t i = 0; i < sizes.size(); ++i)
    if (i != best) largest_other = std::max(largest_other, sizes[i].volume);
  const Amount volume = sizes[best].volume;
  const bool too_long = largest_other > longest_table / volume;
  const Amount table = too_long ? longest_table : volume * largest_other;
  return need > table ? (need - table) / volume : 0;
}

/// The least total of tins that hold `need`, as counts by size: dynamic programming over every
/// amount up to the need. Cost, volume and number of tins all add up, so the best choice for an
/// amount is the best one for what is left after its last tin.
std::vector<int> least_cover(Amount need, const std::vector<Total>& sizes) {
  std::vector<int> counts(sizes.size(), 0);
  if (need <= 0) return counts;
  const Amount largest = std::ranges::max(sizes, {}, &Total::volume).volume;
  // Only the last `largest` totals are ever looked back at.
  std::vector<Total> recent(static_cast<std::size_t>(std::min(largest, need)) + 1);
  std::vector<std::uint16_t> last_tin(static_cast<std::size_t>(need) + 1);
  const auto slot = [&](Amount amount) { return static_cast<std::size_t>(amount) % recent.size(); };
  for (Amount amount = 1; amount <= need; ++amount) {
    Total best;
    std::size_t best_size = sizes.size();
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      const Amount left = std::max<Amount>(0, amount - sizes[i].volume);
      const Total total = recent[slot(left)] + sizes[i];
      if (best_size == sizes.size() || total < best) {
        best = total;
        best_size = i;
      }
    }
    recent[slot(amount)] = best;
    last_tin[static_cast<std::size_t>(amount)] = static_cast<std::uint16_t>(best_size);
  }
  for (Amount amount = need; amount > 0;) {
    const std::size_t size = last_tin[static_cast<std::size_t>(amount)];
    ++counts[size];
    amount -= sizes[size].volume;
  }
  return counts;
}

/// The largest volume that goes into every size without a rest; 1 at the least.
Amount common_measure(const std::vector<Total>& sizes) {
  Amount measure = 0;
  for (const Total& tin : sizes) measure = std::gcd(measure, tin.volume);
  return std::max<Amount>(1, measure);
}

/// Sizes of a millilitre and more, with their place in `offered`.
struct Countable {
  std::vector<Total> sizes;
  std::vector<std::size_t> place;
};

Countable countable(const std::vector<TinSize>& offered, bool priced) {
  Countable result;
  for (std::size_t i = 0; i < offered.size(); ++i) {
    const Amount volume = millilitres_down(offered[i].volume);
    if (volume < 1) continue;
    const std::int64_t cost = priced ? std::llround(*offered[i].price * 1e4) : 0;
    result.sizes.push_back({.cost = cost, .volume = volume, .tins = 1});
    result.place.push_back(i);
  }
  if (result.sizes.empty()) throw std::invalid_argument("no tin size of a millilitre or more");
  return result;
}

}  // namespace

TinChoice choose_tins(Volume needed, const std::vector<TinSize>& sizes) {
  TinChoice choice;
  choice.priced = std::ranges::all_of(sizes, [](const TinSize& s) { return s.price.has_value(); });
  choice.counts.assign(sizes.size(), 0);
  Countable tins = countable(sizes, choice.priced);

  const Amount measure = common_measure(tins.sizes);
  for (Total& tin : tins.sizes) tin.volume /= measure;
  Amount need = std::max<Amount>(0, (millilitres_up(needed) + measure - 1) / measure);

  const std::size_t best = best_value(tins.sizes);
  const Amount outright = bought_outright(need, tins.sizes, best);
  need -= outright * tins.sizes[best].volume;
  std::vector<int> counts = least_cover(need, tins.sizes);
  counts[best] += static_cast<int>(outright);

  for (std::size_t i = 0; i < counts.size(); ++i) {
    const TinSize& size = sizes[tins.place[i]];
    choice.counts[tins.place[i]] = counts[i];
    choice.bought += counts[i] * size.volume;
    if (choice.priced) choice.cost += counts[i] * *size.price;
  }
  return choice;
}

}  // namespace tackfree
