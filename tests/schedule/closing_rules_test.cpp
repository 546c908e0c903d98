#include "tackfree/schedule/closing_rules.hpp"

#include "tackfree/air/coating_limits.hpp"

#include <limits>
#include <set>

#include <doctest/doctest.h>

namespace tackfree {
namespace {

TEST_CASE("no number stands for two rules, and all fit into what the solver keeps of a rule") {
  std::set<int> numbers{solver::no_rule,     rules::calendar,   rules::too_short, rules::quiet,
                        rules::not_before,   rules::no_coating, rules::pinned,    rules::due,
                        rules::window_below, rules::as_last,    rules::put_off};
  std::size_t rules_named = 11;
  for (std::size_t gate = 0; gate < gate_count; ++gate, ++rules_named)
    numbers.insert(rules::first_gate + static_cast<int>(gate));
  for (std::size_t release = 0; release < rules::most_releases; ++release, ++rules_named)
    numbers.insert(rules::first_release + static_cast<int>(release));
  CHECK(numbers.size() == rules_named);
  CHECK(*numbers.rbegin() <= std::numeric_limits<solver::Rule>::max());
}

TEST_CASE("rules of the air are gates, all others are not") {
  for (std::size_t gate = 0; gate < gate_count; ++gate) {
    const auto rule = static_cast<solver::Rule>(rules::first_gate + gate);
    CHECK(held_by(rule) == HeldBy::air);
    CHECK(gate_of(rule) == static_cast<Gate>(gate));
  }
  for (const solver::Rule rule : {rules::calendar, rules::quiet, rules::pinned, rules::as_last}) {
    CHECK_FALSE(gate_of(rule));
    CHECK(held_by(rule) != HeldBy::air);
  }
  CHECK(held_by(rules::too_short) == HeldBy::calendar);
  CHECK(held_by(rules::as_last) == HeldBy::last_plan);
  CHECK(held_by(rules::put_off) == HeldBy::order);
}

}  // namespace
}  // namespace tackfree
