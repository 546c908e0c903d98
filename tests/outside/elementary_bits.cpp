// Elementary bits: a hash of a million results each of exp, log and pow, for
// tests/outside/same_bytes.py, which runs it with and without fused multiply-add.
#include "tackfree/base/elementary.hpp"

#include <bit>
#include <cstdint>
#include <cstdio>
#include <random>

int main() {
  using namespace tackfree;
  std::mt19937_64 random(20261130);
  std::uint64_t hash = 14695981039346656037U;  // FNV-1a, by words
  const auto add = [&](double result) {
    hash = (hash ^ std::bit_cast<std::uint64_t>(result)) * 1099511628211U;
  };
  const auto number = [&] { return static_cast<double>(random() >> 11) * 0x1p-53; };
  for (int i = 0; i < 1'000'000; ++i) {
    const double x = 20 * number(), y = 6 * number() - 3;
    add(exponential(-x));
    add(logarithm(x));
    add(power(x, y));
  }
  std::printf("%016llx\n", static_cast<unsigned long long>(hash));
}
