#include "tackfree/air/conditioned_air.hpp"

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/psychrometrics.hpp"

#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

Instant conditioned_at(const char* text) { return parse_instant(text).value(); }

const Interval warm_night{conditioned_at("2027-01-14T17:00Z"), conditioned_at("2027-01-15T06:00Z")};

std::vector<AirNode> steady_room() {
  const AirState state{celsius(5), vapour_pressure(celsius(5), humidity_percent(80))};
  return {{conditioned_at("2027-01-14T00:00Z"), state},
          {conditioned_at("2027-01-16T00:00Z"), state}};
}

AirState state_at(const std::vector<AirNode>& nodes, Instant at) {
  for (std::size_t i = 1; i < nodes.size(); ++i)
    if (at <= nodes[i].at) return state_between(nodes[i - 1], nodes[i], at);
  return nodes.back().state;
}

}  // namespace

// Saturation at 5 C is 872.6 Pa and at 12 C 1402.8 Pa (ASHRAE Handbook Fundamentals 2017, ch. 1,
// table 3, to four digits from memory): 80 % at 5 C is 49.8 % at 12 C.
TEST_CASE("a room that is warmed keeps its water and is relatively drier, in its hours only") {
  const auto better = conditioned_air(steady_room(), {{.time = warm_night, .warmer = kelvins(7)}});
  const AirState inside = state_at(better, warm_night.begin);
  CHECK(inside.temperature == celsius(12));
  CHECK(inside.vapour == steady_room().front().state.vapour);
  CHECK(relative_humidity(inside.temperature, inside.vapour).in(humidity_percent) ==
        Approx(49.8).epsilon(0.003));
  CHECK(state_at(better, warm_night.end - Minutes(5)).temperature == celsius(12));
  CHECK(state_at(better, warm_night.begin - Minutes(5)).temperature == celsius(5));
  CHECK(state_at(better, warm_night.end).temperature == celsius(5));
}

TEST_CASE("drying takes points of humidity off, and leaves some water in the air") {
  const auto less = conditioned_air(steady_room(), {{.drier = humidity_percent(30)}});
  const AirState state = less.front().state;
  CHECK(relative_humidity(state.temperature, state.vapour).in(humidity_percent) == Approx(50));
  const auto bone = conditioned_air(
      steady_room(), {{.drier = humidity_percent(60)}, {.drier = humidity_percent(60)}});
  CHECK(relative_humidity(celsius(5), bone.back().state.vapour).in(humidity_percent) == Approx(5));
}

TEST_CASE("boards follow the warmed room behind it") {
  AirMix mix = as_mix(ConstantAir{celsius(5), humidity_percent(80)});
  mix.boards = Boards{.thickness = millimetres(30)};
  mix.conditioned = {{.time = warm_night, .warmer = kelvins(7)}};
  Problems problems;
  const auto series = AirSeries::over(
      mix, {conditioned_at("2027-01-14T00:00Z"), conditioned_at("2027-01-16T00:00Z")}, problems);
  REQUIRE(series);
  CHECK(series->surface_at(warm_night.begin + Minutes(5)) < celsius(8));
  CHECK(series->surface_at(warm_night.begin + Minutes(300)) > celsius(11.9));
}
