#include "tackfree/air/coating_limits.hpp"

#include "tackfree/air/gates_ahead.hpp"

#include <algorithm>
#include <vector>

#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

const Instant first_row = instant("2026-04-10T06:00:00Z");
constexpr Minutes grid{5};
constexpr int hour_slots = 12;  ///< in slots

/// Put on at 10 to 30 C, at most 80 % RH, 3 K above the dew point, then not under 5 C.
CoatingLimits varnish_limits() {
  CoatingLimits limits;
  limits.put_on_min.value = celsius(10);
  limits.put_on_max.value = celsius(30);
  limits.humidity_max.value = humidity_percent(80);
  limits.hold_min.value = celsius(5);
  limits.dew_point_margin.value = kelvins(3);
  return limits;
}
/// The same, and 24 h at 10 C or more. Source: USDA Wood Handbook, ch. 16, waterborne finishes.
CoatingLimits waterborne_limits() {
  CoatingLimits limits = varnish_limits();
  limits.hold_min.value = celsius(5);
  limits.hold_put_on_min = sourced(hours(24), Origin::published, "USDA Wood Handbook, ch. 16");
  return limits;
}

Interval span_of(const AirRows& rows) { return {rows.rows.front().at, rows.rows.back().at}; }

/// Touch-dry after 5 h of label time by the lacquer law: about 7 h at 15 C.
GateTable table(const CoatingLimits& limits, const AirRows& rows, Duration touch_after = hours(5)) {
  const AirSeries air = series(rows, span_of(rows));
  const DryingClock clock(coating(lacquer_law(), {{Stage::touch, touch_after}}), air,
                          metres_per_second(0.10));
  return GateTable(limits, air, clock, span_of(rows), grid);
}

/// 48 hours at 15 C with a dew point of 5 C: nothing forbids coating in it.
AirRows mild() { return hourly(first_row, std::vector<double>(49, 15), 5); }
void set_temperature(AirRows& rows, int at_hour, double t) {
  rows.rows.at(static_cast<std::size_t>(at_hour)).temperature = celsius(t);
}

}  // namespace

TEST_CASE("Each put-on rule forbids air beyond its limit and allows the limit itself") {
  const CoatingLimits limits = varnish_limits();
  CHECK_FALSE(put_on_gate(limits, air_at(15, 50)));
  CHECK(put_on_gate(limits, air_at(9.99, 50)) == Gate::too_cold);
  CHECK_FALSE(put_on_gate(limits, air_at(10, 50)));
  CHECK(put_on_gate(limits, air_at(30.01, 50)) == Gate::too_warm);
  CHECK_FALSE(put_on_gate(limits, air_at(30, 50)));
  CHECK(put_on_gate(limits, air_at(20, 80.01)) == Gate::too_humid);
  CHECK_FALSE(put_on_gate(limits, air_at(20, 80)));
}

TEST_CASE("A margin of 3 K over the dew point allows the humidities that physics says") {
  // Source: saturation pressure 3 K colder over saturation pressure, worked apart from this
  // program. Tolerance: the printed digit, from both sides.
  CoatingLimits limits = varnish_limits();
  limits.humidity_max.value = humidity_percent(100);
  limits.put_on_min.value = celsius(0);
  struct Row {
    double t, rh_pct;
  };
  const std::vector<Row> rows = {{5, 80.913},  {10, 81.593}, {15, 82.242}, {20, 82.861},
                                 {23, 83.218}, {25, 83.451}, {30, 84.015}};
  for (const auto& r : rows) {
    CAPTURE(r.t);
    CHECK_FALSE(put_on_gate(limits, air_at(r.t, r.rh_pct - 0.001)));
    CHECK(put_on_gate(limits, air_at(r.t, r.rh_pct + 0.001)) == Gate::dew);
  }
}

TEST_CASE("Nothing forbids a coat in mild air") {
  const GateTable gates = table(varnish_limits(), mild());
  for (int start = 0; start < 39 * hour_slots; ++start) CHECK_FALSE(gates.forbids(start, 6));
}

TEST_CASE("Too cold, too warm or too humid at any time while coating forbids it, and not later") {
  struct Row {
    double t, dew;
    Gate gate;
  };
  const std::vector<Row> rows = {
      {9.9, 5, Gate::too_cold}, {30.1, 5, Gate::too_warm}, {15, 11.65, Gate::too_humid}};
  for (const auto& r : rows) {
    AirRows air = mild();
    air.rows.at(10).temperature = celsius(r.t);
    air.rows.at(10).dew_point = celsius(r.dew);
    const GateTable gates = table(varnish_limits(), air);
    CAPTURE(word_for(r.gate));
    CHECK(gates.forbids(10 * hour_slots, 1) == r.gate);
    CHECK(gates.forbids(10 * hour_slots - 1, 1) == r.gate);  // finished just then: both ends count
    CHECK(gates.forbids(9 * hour_slots, 24) == r.gate);
    CHECK_FALSE(
        gates.forbids(8 * hour_slots, 6));  // touch-dry comes later, these rules do not bind it
    CHECK_FALSE(gates.forbids(11 * hour_slots, 6));
  }
}

TEST_CASE("The dew-point margin holds from the start until touch-dry") {
  AirRows air = mild();
  air.rows.at(20).dew_point = celsius(12.1);
  CoatingLimits limits = varnish_limits();
  limits.humidity_max.value = humidity_percent(100);
  const GateTable gates = table(limits, air);
  // 5 h of label time take 5 / 0.636985 = 7.85 h at 15 C.
  CHECK(gates.forbids(20 * hour_slots, 1) == Gate::dew);
  CHECK(gates.forbids(13 * hour_slots, 6) == Gate::dew);
  CHECK_FALSE(gates.forbids(11 * hour_slots, 6));
  CHECK_FALSE(gates.forbids(21 * hour_slots, 6));
}

TEST_CASE("Air that falls under the hold minimum before touch-dry forbids the coat") {
  AirRows air = mild();
  set_temperature(air, 20, 4.9);
  air.rows.at(20).dew_point = celsius(0);
  const GateTable gates = table(varnish_limits(), air);
  CHECK(gates.forbids(16 * hour_slots, 6) == Gate::cold_before_dry);
  CHECK_FALSE(gates.forbids(11 * hour_slots, 6));
  CHECK_FALSE(gates.forbids(21 * hour_slots, 6));
  set_temperature(air, 20, 5);
  CHECK_FALSE(table(varnish_limits(), air).forbids(16 * hour_slots, 6));
}

TEST_CASE("A coat that is not touch-dry or not finished within the span is forbidden") {
  const GateTable gates = table(varnish_limits(), mild());
  CHECK(gates.forbids(41 * hour_slots, 6) == Gate::cold_before_dry);
  CHECK(gates.forbids(48 * hour_slots - 2, 6) == Gate::cold_before_dry);
  // Air in which the film has stopped, though it may be put on.
  CoatingLimits limits = varnish_limits();
  limits.put_on_min.value = celsius(-20);
  limits.hold_min.value = celsius(-20);
  const AirRows frost = hourly(first_row, std::vector<double>(49, -12), -20);
  CHECK(table(limits, frost).forbids(0, 6) == Gate::cold_before_dry);
}

TEST_CASE("Waterborne wants 10 C for 24 h after it is put on, to the slot") {
  AirRows air = mild();
  // 10 C is passed downwards just at hour 30: 15 C at 29:00, 10 C at 30:00, 5 C at 31:00.
  set_temperature(air, 30, 10);
  set_temperature(air, 31, 5);
  air.rows.at(31).dew_point = celsius(0);
  const GateTable gates = table(waterborne_limits(), air, hours(1));
  const int put_on = 6;
  // Finished 24 h before 30:00, when it is just 10 C: allowed. One slot later: under 10 C by 24 h.
  CHECK_FALSE(gates.forbids(6 * hour_slots - put_on, put_on));
  CHECK(gates.forbids(6 * hour_slots - put_on + 1, put_on) == Gate::cold_within_hold);
  CHECK(gates.forbids(20 * hour_slots, put_on) == Gate::cold_within_hold);
  CHECK_FALSE(gates.forbids(32 * hour_slots, put_on));
  // The same air without that rule.
  CHECK_FALSE(table(varnish_limits(), air, hours(1)).forbids(20 * hour_slots, put_on));
}

TEST_CASE("A hold time past the end of the span is judged up to the end") {
  AirRows air = mild();
  CHECK_FALSE(table(waterborne_limits(), air, hours(1)).forbids(40 * hour_slots, 6));
  set_temperature(air, 48, 9.9);
  CHECK(table(waterborne_limits(), air, hours(1)).forbids(40 * hour_slots, 6) ==
        Gate::cold_within_hold);
}

TEST_CASE("The table agrees with a plain walk over the instants of the grid") {
  for (std::uint64_t seed = 1; seed <= 4; ++seed) {
    const AirRows rows = random_rows(seed, first_row, 97);
    const AirSeries air = series(rows, span_of(rows));
    const CoatingLimits limits = waterborne_limits();
    const DryingClock clock(coating(waterborne_law(), {{Stage::touch, hours(1)}}), air,
                            metres_per_second(0.10));
    const GateTable gates(limits, air, clock, span_of(rows), grid);
    const auto instant_of = [&](int i) { return first_row + i * grid; };
    const int slots = 96 * hour_slots;
    int allowed = 0;
    for (int start = 0; start + 4 <= slots; ++start) {
      bool fit = true;
      for (int i = start; i <= start + 4; ++i)
        fit = fit && !put_on_gate(limits, air.at(instant_of(i)));
      const auto touch = clock.reached(Stage::touch, instant_of(start + 4));
      fit = fit && touch && *touch <= instant_of(slots);
      for (int i = start; fit && i <= slots; ++i) {
        const AirState state = air.at(instant_of(i));
        if (instant_of(i) < *touch + grid)
          fit = state.temperature >= limits.hold_min.value &&
                dew_point(state.vapour) + limits.dew_point_margin.value <= state.temperature;
        if (i <= start + 4 + 24 * hour_slots)
          fit = fit && state.temperature >= limits.put_on_min.value;
      }
      allowed += fit ? 1 : 0;
      REQUIRE(fit == !gates.forbids(start, 4).has_value());
    }
    CAPTURE(allowed);
    CHECK(allowed < slots);
  }
}

TEST_CASE(
    "The rules that fail are none just where the table allows a coat, and its rule is among them") {
  for (std::uint64_t seed = 1; seed <= 4; ++seed) {
    const AirRows rows = random_rows(seed, first_row, 97);
    const AirSeries air = series(rows, span_of(rows));
    for (const CoatingLimits& limits : {waterborne_limits(), varnish_limits()}) {
      const DryingClock clock(coating(waterborne_law(), {{Stage::touch, hours(1)}}), air,
                              metres_per_second(0.10));
      const GateTable gates(limits, air, clock, span_of(rows), grid);
      for (int start = 0; start + 4 <= 96 * hour_slots; start += 3) {
        const auto failing =
            GatesAhead(limits, air, clock, first_row + start * grid, 4 * grid, grid).failing(0);
        const auto first = gates.forbids(start, 4);
        REQUIRE(failing.empty() == !first.has_value());
        if (first) CHECK(std::find(failing.begin(), failing.end(), *first) != failing.end());
      }
    }
  }
}

TEST_CASE(
    "Cold boards in warm damp air are caught by the dew-point rule, hot ones by the warmest") {
  const CoatingLimits limits = varnish_limits();
  const AirState air = air_at(21, 50);  // dew point 10.19 C
  CHECK_FALSE(put_on_gate(limits, air, celsius(13.2)));
  CHECK(put_on_gate(limits, air, celsius(13.1)) == Gate::dew);
  CHECK(put_on_gate(limits, air, celsius(8)) == Gate::too_cold);
  CHECK(put_on_gate(limits, air, celsius(31)) == Gate::too_warm);
  AirMix mix{.file = "", .sources = {{"", ConstantAir{celsius(21), humidity_percent(50)}, 0}}};
  mix.sources.insert(mix.sources.begin(),
                     {"outdoors", hourly(first_row - Minutes(180), {8, 8, 8, 8}, 5), 0});
  mix.indoors = Indoors{.time_constant = {hours(0.1), Origin::assumed, {}}};
  mix.boards = Boards{.thickness = millimetres(20), .from_outdoors = true};
  const AirSeries room = series(mix, {first_row, first_row + Minutes(1440)});
  CHECK(room.surface_at(first_row).in_celsius() == doctest::Approx(8));
  CHECK(room.surface_at(first_row + Minutes(90)) < room.at(first_row + Minutes(90)).temperature);
  CHECK(room.surface_at(first_row + Minutes(600)).in_celsius() ==
        doctest::Approx(21).epsilon(1e-6));
}

TEST_CASE("Blush is likely over 65 % RH, possible near the dew point, and else not") {
  // Source: practice of finishers; margins of 20 F and 65 %.
  CHECK(blush_risk(air_at(27, 70)) == BlushRisk::high);
  CHECK((celsius(27) - dew_point(vapour_pressure(celsius(27), humidity_percent(70)))).in(kelvins) ==
        doctest::Approx(5.938).epsilon(1e-4));
  CHECK(blush_risk(air_at(24, 45)) == BlushRisk::none);
  CHECK((celsius(24) - dew_point(vapour_pressure(celsius(24), humidity_percent(45)))).in(kelvins) ==
        doctest::Approx(12.653).epsilon(1e-4));
  CHECK(blush_risk(air_at(21.1, 65)) == BlushRisk::some);
  CHECK((celsius(21.1) - dew_point(vapour_pressure(celsius(21.1), humidity_percent(65))))
            .in(kelvins) == doctest::Approx(6.830).epsilon(1e-4));
}

TEST_CASE("The limits of blush are 20 F over the dew point and 65 % RH, from both sides") {
  // Source: practice of finishers. A tenth of a degree or of a percent to each side.
  const auto risk = [](double over_dew_f, double t) {
    return blush_risk(
        {celsius(t), saturation_pressure(celsius(t) - fahrenheit_degrees(over_dew_f))});
  };
  for (const double t : {12.0, 20.0, 28.0}) {
    CAPTURE(t);
    CHECK(risk(20.1, t) == BlushRisk::none);
    CHECK(risk(19.9, t) == BlushRisk::some);
    CHECK(blush_risk(air_at(t, 64.9)) == BlushRisk::some);
    CHECK(blush_risk(air_at(t, 65.1)) == BlushRisk::high);
  }
}

TEST_CASE("Each gate names the origin of its limit") {
  CoatingLimits limits = waterborne_limits();
  limits.dew_point_margin = {kelvins(3), Origin::published, "MIL-HDBK-1110"};
  limits.put_on_min.origin = Origin::label;
  CHECK(origin_of(limits, Gate::dew).source == "MIL-HDBK-1110");
  CHECK(origin_of(limits, Gate::too_cold).origin == Origin::label);
  CHECK(origin_of(limits, Gate::cold_within_hold).source == "USDA Wood Handbook, ch. 16");
}

TEST_CASE("Every gate has its own words") {
  for (std::size_t i = 0; i < gate_count; ++i) {
    for (std::size_t j = 0; j < i; ++j)
      CHECK(word_for(static_cast<Gate>(i)) != word_for(static_cast<Gate>(j)));
  }
}
