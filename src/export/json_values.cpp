#include "tackfree/export/json_values.hpp"

#include "tackfree/words/figures.hpp"
#include "tackfree/words/step_words.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace tackfree {

std::string_view key_for(Gate gate) {
  switch (gate) {
    case Gate::too_cold:
      return "too_cold";
    case Gate::too_warm:
      return "too_warm";
    case Gate::too_humid:
      return "too_humid";
    case Gate::dew:
      return "dew";
    case Gate::cold_before_dry:
      return "cold_before_dry";
    case Gate::cold_within_hold:
      return "cold_within_hold";
  }
  return "too_cold";
}

std::string_view key_for(Stage stage) {
  switch (stage) {
    case Stage::dust_free:
      return "dust_free";
    case Stage::touch:
      return "touch";
    case Stage::handle:
      return "handle";
    case Stage::recoat:
      return "recoat";
    case Stage::sand:
      return "sand";
    case Stage::light_use:
      return "light_use";
    case Stage::hardware:
      return "hardware";
    case Stage::stack:
      return "stack";
    case Stage::full_cure:
      return "full_cure";
  }
  return "touch";
}

void put_instant(nlohmann::ordered_json& object, std::string_view name,
                 const std::optional<Instant>& at, const Zone& zone) {
  object[fmt::format("{}_at", name)] =
      at ? nlohmann::ordered_json(iso_utc(*at)) : nlohmann::ordered_json(nullptr);
  object[fmt::format("{}_local", name)] =
      at ? nlohmann::ordered_json(iso_local(*at, zone)) : nlohmann::ordered_json(nullptr);
}

void put_gate(nlohmann::ordered_json& object, const Job& job, const Coating& coating, Gate gate) {
  const GateOrigin origin = origin_of(coating.limits, gate);
  object["gate"] = key_for(gate);
  object["rule"] = gate_words(gate, coating.limits, Figures(job));
  object["origin"] = word_for(origin.origin);
  object["source"] = origin.source;
}

}  // namespace tackfree
