// Prints 200 random offers of tins with what the program buys of them, as JSON lines, for
// tests/outside/tins_glpk.py to solve again.
#include "tackfree/shopping/tins.hpp"

#include <random>
#include <string>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace {

using namespace tackfree;

/// Round sizes as shops have them and sizes that nobody has, three offers in four with prices.
std::vector<TinSize> offer(std::mt19937& random) {
  const auto below = [&random](unsigned most) { return static_cast<int>(random() % most); };
  const bool priced = below(4) != 0;
  const int kind = below(3);
  std::vector<TinSize> sizes;
  for (int left = 1 + below(5); left > 0; --left) {
    const int ml = kind == 0   ? 250 * (1 + below(10))
                   : kind == 1 ? 25 * (1 + below(100))
                               : 50 + below(2450);
    TinSize tin{.label = "tin", .volume = millilitres(ml), .price = {}};
    if (priced) tin.price = (ml / 10 + below(1500) + 50) / 100.0;
    sizes.push_back(tin);
  }
  return sizes;
}

}  // namespace

int main() {
  constexpr int cases = 200;
  std::mt19937 random(20260301);
  for (int i = 0; i < cases; ++i) {
    const std::vector<TinSize> sizes = offer(random);
    const int need = 1 + static_cast<int>(random() % (i % 4 == 0 ? 60000 : 6000));
    const TinChoice choice = choose_tins(millilitres(need), sizes);
    std::vector<std::string> tins;
    for (const TinSize& tin : sizes)
      tins.push_back(
          fmt::format(R"({{"ml":{:.0f},"price":{}}})", tin.volume.in(millilitres),
                      tin.price ? fmt::format("{:.2f}", *tin.price) : std::string("null")));
    fmt::print(R"({{"need_ml":{},"tins":[{}],"counts":[{}],"bought_ml":{:.0f},"cost":{:.2f}}})",
               need, fmt::join(tins, ","), fmt::join(choice.counts, ","),
               choice.bought.in(millilitres), choice.cost);
    fmt::print("\n");
  }
}
