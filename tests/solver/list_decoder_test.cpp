#include "bench/list_decoder.hpp"

#include "tackfree/solver/serial.hpp"

#include <numeric>

#include "bench/check.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

TEST_CASE(
    "what is decoded breaks no rule, and without limits is what the serial scheduler places") {
  int decoded = 0, same = 0;
  for (unsigned seed = 0; seed < 1500; ++seed) {
    SchedulingProblem p = testing::problem_with_every_rule(seed, 50, 3, true);
    for (Product& product : p.products) product = {0, 0};
    ListDecoder decoder(p);
    std::vector<std::size_t> list(p.activities.size());
    std::iota(list.begin(), list.end(), std::size_t{0});
    const auto timed = decoder.decode(list, 10);
    if (!timed) continue;
    ++decoded;
    CAPTURE(seed);
    const Solution s = solution_from(p, timed->starts);
    for (const std::string& broken : violations(p, s)) FAIL_CHECK(broken);
    CHECK(worth(p, s).ready == timed->ready);
    if (!p.maximum_lags.empty()) continue;
    ++same;
    const Solution serial =
        placed_by_priority(p, std::vector<std::int64_t>(list.begin(), list.end()));
    for (std::size_t i = 0; i < list.size(); ++i)
      CHECK(serial.activities[i].begin() == timed->starts[i]);
  }
  CHECK(decoded > 500);
  CHECK(same > 100);
}

TEST_CASE("set-up and clean-up cannot be decoded") {
  SchedulingProblem p;
  p.products = {{0, 0}};
  CHECK(ListDecoder::can_decode(p));
  p.products = {{0, 1}};
  CHECK_FALSE(ListDecoder::can_decode(p));
}

}  // namespace
}  // namespace tackfree::solver
