#include "tackfree/words/remedy_words.hpp"

#include "tackfree/words/air_words.hpp"

#include <algorithm>
#include <variant>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

std::string change_words(const ConditionedAir& air, const Figures& figures) {
  return "With the room " + conditioned_words(air, figures);
}

std::string change_words(const AddedHours& hours, const Figures& figures) {
  const DayWindow& more = hours.windows.at(0);
  return fmt::format("With {} min more work on {}, until {}", more.end - more.begin,
                     figures.day_of(hours.on), figures.clock_of_day(more.end));
}

std::string local_text(Instant at, const Zone& zone) {
  const LocalTime local = zone.local(at);
  return iso_date(local.on) + "T" + iso_clock(local.minute_of_day);
}

/// Without what warms it: only the person knows that, and until it is said every warning stays.
std::string key_of(const ConditionedAir& air, const Job& job) {
  std::vector<std::string> members;
  if (air.time) {
    members.push_back(
        fmt::format(R"("from": "{}")", local_text(air.time->begin, job.calendar.zone)));
    members.push_back(
        fmt::format(R"("until": "{}")", local_text(air.time->end, job.calendar.zone)));
  }
  if (air.warmer > TemperatureDifference())
    members.push_back(job.units == UnitSystem::us
                          ? fmt::format(R"("warmer_f": {:g})", air.warmer.in(fahrenheit_degrees))
                          : fmt::format(R"("warmer_c": {:g})", air.warmer.in(kelvins)));
  if (air.drier > Humidity())
    members.push_back(fmt::format(R"("drier_pct": {:g})", air.drier.in(humidity_percent)));
  return fmt::format(R"("air": {{"conditioned": [{{{}}}]}})", fmt::join(members, ", "));
}

std::string key_of(const AddedHours& hours, const Job&) {
  const DayWindow& more = hours.windows.at(0);
  return fmt::format(R"("calendar": {{"added": [{{"on": "{}", "hours": ["{}-{}"]}}]}})",
                     iso_date(hours.on), iso_clock(more.begin), iso_clock(more.end));
}

bool warms(const Remedy& remedy) {
  const auto* air = std::get_if<ConditionedAir>(&remedy.change);
  return air != nullptr && air->warmer > TemperatureDifference();
}

}  // namespace

std::string remedy_words(const Remedy& remedy, const DatedWork& work, const WorkWords& words) {
  const Figures& figures = words.figures();
  const std::string change =
      std::visit([&](const auto& each) { return change_words(each, figures); }, remedy.change);
  return fmt::format(
      "{}: {}, can begin {}. {}.", change,
      words.full_title(work.list.operations.at(remedy.operation)), figures.moment(remedy.begins),
      remedy.ready_at ? fmt::format("All is ready for light use by {}",
                                    figures.moment(figures.full_hour_up(*remedy.ready_at)))
                      : std::string("Other steps still find no time"));
}

std::string remedy_key(const Remedy& remedy, const Job& job) {
  return std::visit([&](const auto& each) { return key_of(each, job); }, remedy.change);
}

std::string warming_words(const std::vector<Remedy>& remedies) {
  if (std::ranges::none_of(remedies, warms)) return "";
  return "Warm the room with nothing that has a flame or glows: it would light the vapour. Start "
         "before you open the tin, and air as planned: the room must be that much warmer while you "
         "air. Only if your heater is sealed, add \"heater_is\": \"sealed\"; until then the plan "
         "keeps its warning.";
}

}  // namespace tackfree
