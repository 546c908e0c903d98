#include "tackfree/words/air_words.hpp"

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

}  // namespace tackfree
