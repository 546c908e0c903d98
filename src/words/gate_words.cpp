#include "tackfree/words/gate_words.hpp"

#include <fmt/format.h>

namespace tackfree {

std::string gate_words(Gate gate, const CoatingLimits& limits, const Figures& figures) {
  switch (gate) {
    case Gate::too_cold:
      return fmt::format("too cold to coat (under {})",
                         figures.temperature(limits.put_on_min.value).text());
    case Gate::too_warm:
      return fmt::format("too warm to coat (over {})",
                         figures.temperature(limits.put_on_max.value).text());
    case Gate::too_humid:
      return fmt::format("too damp to coat (over {})", humidity_text(limits.humidity_max.value));
    case Gate::dew:
      return fmt::format("too near the dew point (under {} above it)",
                         figures.temperature_difference(limits.dew_point_margin.value).text());
    case Gate::cold_before_dry:
      return fmt::format("too cold before touch-dry (under {})",
                         figures.temperature(limits.hold_min.value).text());
    case Gate::cold_within_hold:
      return fmt::format(
          "too cold within {} of coating (under {})",
          wait_text(limits.hold_put_on_min ? limits.hold_put_on_min->value : Duration()),
          figures.temperature(limits.put_on_min.value).text());
  }
  return std::string(word_for(gate));
}

std::string gate_sentence(Gate gate, const CoatingLimits& limits, std::string_view until,
                          const Figures& figures) {
  const std::string put_on = figures.temperature(limits.put_on_min.value).text();
  switch (gate) {
    case Gate::too_cold:
      return fmt::format("It is too cold to coat {} (the limit is {})", until, put_on);
    case Gate::too_warm:
      return fmt::format("It is too warm to coat {} (the limit is {})", until,
                         figures.temperature(limits.put_on_max.value).text());
    case Gate::too_humid:
      return fmt::format("It is too damp to coat {} (the limit is {})", until,
                         humidity_text(limits.humidity_max.value));
    case Gate::dew:
      return fmt::format("The air is close to dew {}: moisture would settle in the wet coat",
                         until);
    case Gate::cold_before_dry:
      return fmt::format("A coat put on {} would get colder than {} before it is touch-dry", until,
                         figures.temperature(limits.hold_min.value).text());
    case Gate::cold_within_hold:
      return fmt::format(
          "A coat put on {} would get colder than {} within {}", until, put_on,
          wait_text(limits.hold_put_on_min ? limits.hold_put_on_min->value : Duration()));
  }
  return std::string(word_for(gate));
}

std::string gate_clause(Gate gate, std::string_view piece) {
  switch (gate) {
    case Gate::too_cold:
      return fmt::format("it is too cold to coat {}", piece);
    case Gate::too_warm:
      return fmt::format("it is too warm to coat {}", piece);
    case Gate::too_humid:
      return fmt::format("it is too damp to coat {}", piece);
    case Gate::dew:
      return fmt::format("the air is too close to dew to coat {}", piece);
    case Gate::cold_before_dry:
    case Gate::cold_within_hold:
      break;
  }
  return fmt::format("a fresh coat on {} would get too cold", piece);
}

}  // namespace tackfree
