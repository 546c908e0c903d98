#include "tackfree/words/air_words.hpp"

#include <string_view>
#include <variant>

#include <fmt/format.h>

namespace tackfree {

std::string source_words(const NamedSource& source) {
  if (!source.name.empty() || source.typical_month == 0) return source.name;
  return fmt::format("typical {} values", month_name(source.typical_month));
}

std::string held_month_words(const HeldMonth& held) {
  return fmt::format("{} has no typical values of its own: the plan uses those of {} for it.",
                     month_name(held.month), month_name(held.held));
}

std::string conditioned_words(const ConditionedAir& air, const Figures& figures) {
  std::string what;
  if (air.warmer > TemperatureDifference())
    what = figures.temperature_difference(air.warmer).text() + " warmer";
  if (air.drier > Humidity())
    what += fmt::format("{}{:.0f} points of humidity drier", what.empty() ? "" : " and ",
                        air.drier.in(humidity_percent));
  if (!air.time) return what + " throughout";
  const auto [begin, end] = *air.time;
  const bool same_day = figures.local_date(begin) == figures.local_date(end);
  return fmt::format("{} from {} until {}", what, figures.moment(begin),
                     same_day ? figures.clock(end) : figures.moment(end));
}

namespace {

std::string rows_words(const AirRows& rows) {
  return rows.recorded_in
             ? fmt::format("by the hours recorded in {}, not a forecast", *rows.recorded_in)
             : "by the hours of your file";
}

}  // namespace

std::string record_words(const AirRecord& air) {
  constexpr std::string_view given = "as you gave it";
  if (std::holds_alternative<ConstantAir>(air)) return std::string(given);
  if (const auto* rows = std::get_if<AirRows>(&air)) return rows_words(*rows);
  const auto& sources = std::get<AirMix>(air).sources;
  if (sources.empty()) return "by the forecast";
  const auto& first = sources.front().what;
  if (std::holds_alternative<ConstantAir>(first)) return std::string(given);
  if (std::holds_alternative<AirMonths>(first)) return "by typical months";
  if (const auto* rows = std::get_if<AirRows>(&first)) return rows_words(*rows);
  return "by the forecast";
}

}  // namespace tackfree
