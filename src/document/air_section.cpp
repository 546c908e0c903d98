#include "tackfree/document/air_section.hpp"

#include "tackfree/words/air_words.hpp"

#include <variant>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr Lead air_item = Lead::item();

void write_rows_origin(Page& page, const AirRows& rows, std::string_view whose) {
  page.paragraph(air_item, fmt::format("Hourly rows of {}{}{}{}.", rows.file,
                                       rows.origin.empty() ? "" : ": ", rows.origin, whose));
  if (rows.recorded_in)
    page.paragraph(air_item, fmt::format("Recorded in {} and replayed under the year of this plan: "
                                         "weather that was, not a forecast.",
                                         *rows.recorded_in));
}

void write_constant(Page& page, const ConstantAir& constant, const Figures& figures) {
  page.paragraph(air_item, fmt::format("Always {} and {}, as you gave it.",
                                       figures.temperature(constant.temperature).text(),
                                       humidity_text(constant.humidity)));
}

std::string told_by(const std::string& origin) { return origin.empty() ? "" : ": " + origin; }

void write_source(Page& page, const AirSource& source, const Figures& figures) {
  if (const auto* rows = std::get_if<AirRows>(&source.what)) write_rows_origin(page, *rows, "");
  if (const auto* days = std::get_if<AirDays>(&source.what))
    page.paragraph(air_item,
                   fmt::format("Lows and highs of {}{}; spread over the hours as ASHRAE "
                               "does.",
                               count_text(static_cast<double>(days->days.size()), "day", "days"),
                               told_by(days->origin)));
  if (const auto* months = std::get_if<AirMonths>(&source.what))
    page.paragraph(air_item, fmt::format("Typical months{}; spread over the hours as ASHRAE does.",
                                         told_by(months->origin)));
  if (const auto* constant = std::get_if<ConstantAir>(&source.what))
    write_constant(page, *constant, figures);
}

void write_heating(Page& page, const Plan& plan, const Heating& heating, const Figures& figures) {
  std::string hours_text;
  for (const DayWindow& window : heating.hours)
    hours_text += fmt::format("{}{} to {}", hours_text.empty() ? "" : ", ",
                              figures.clock_of_day(window.begin), figures.clock_of_day(window.end));
  const Instant until = plan.schedule.ready_at.value_or(plan.schedule.span.end);
  page.paragraph(
      air_item,
      fmt::format("Heated to {} from {}, by at most {} ({}): about {} until {}, by a loss of "
                  "{} ({}).",
                  figures.temperature(heating.set_point).text(), hours_text,
                  power_text(heating.heater.value), word_for(heating.heater.origin),
                  energy_text(plan.air.heat_until(until)), figures.moment(until),
                  heat_loss_text(heating.loss.value), word_for(heating.loss.origin)));
}

void write_room(Page& page, const Plan& plan, const Indoors& indoors, const Figures& figures) {
  page.paragraph(air_item, fmt::format("The room follows outdoors with a time constant of {} ({}); "
                                       "outdoor moisture comes in with the air. Moisture from "
                                       "waterborne coats is left out.",
                                       hours_as_given(indoors.time_constant.value),
                                       word_for(indoors.time_constant.origin)));
  if (indoors.heating) write_heating(page, plan, *indoors.heating, figures);
  if (indoors.humidity_ceiling)
    page.paragraph(air_item, fmt::format("A dehumidifier keeps it at {} or below.",
                                         humidity_text(*indoors.humidity_ceiling)));
}

void write_mix(Page& page, const Plan& plan, const AirMix& mix, const Figures& figures) {
  for (const AirSource& source : mix.sources) write_source(page, source, figures);
  for (const AirSeam& seam : plan.air.seams()) {
    const std::string before = source_words(seam.before);
    page.paragraph(air_item, fmt::format("{} until {}, then {}.", before.empty() ? "Known" : before,
                                         figures.moment(seam.at), source_words(seam.after)));
  }
  for (const HeldMonth& held : plan.air.held_months())
    page.paragraph(air_item, held_month_words(held));
  if (mix.indoors) write_room(page, plan, *mix.indoors, figures);
  if (mix.boards)
    page.paragraph(
        air_item,
        fmt::format("Boards of {} follow the air within {} and begin as warm as {}.",
                    figures.length(mix.boards->thickness).text(), wait_text(plan.board_lag),
                    mix.boards->from_outdoors ? "outdoors" : "the room"));
  for (const ConditionedAir& each : mix.conditioned)
    page.paragraph(air_item, fmt::format("{}, as you set it.", conditioned_words(each, figures)));
}

/// Where wood settles, to look at where that is not right for heated rooms.
void write_wood(Page& page, const Plan& plan, const Figures& figures) {
  const bool before = plan.wood_week.begin < plan.now;
  const bool right = plan.wood_suits_heated_rooms();
  page.paragraph(
      right ? air_item : Lead::look(),
      fmt::format("Wood kept in the mean air of the week {} {} would settle at {} moisture.{}",
                  before ? "up to" : "from", figures.day(plan.now),
                  percent_text(plan.wood_moisture),
                  right ? "" : " Wood for heated rooms should be at 6 to 9 %."));
}

}  // namespace

void write_air(Page& page, const Plan& plan, const Figures& figures) {
  page.heading("The air this plan counts on");
  if (const auto* rows = std::get_if<AirRows>(&plan.job.air))
    write_rows_origin(page, *rows, ", taken as the room's own air");
  if (const auto* constant = std::get_if<ConstantAir>(&plan.job.air))
    write_constant(page, *constant, figures);
  if (const auto* mix = std::get_if<AirMix>(&plan.job.air)) write_mix(page, plan, *mix, figures);
  for (const BridgedGap& bridged : plan.air.bridged())
    page.paragraph(air_item,
                   fmt::format("No rows between {} and {}: bridged by a straight line.",
                               figures.moment(bridged.gap.begin), figures.moment(bridged.gap.end)));
  const auto mean_day = plan.air.mean_day_from();
  if (mean_day)
    page.paragraph(air_item,
                   fmt::format("After {} there are no rows: the mean day of the seven days "
                               "before repeats. Hours from then on may move.",
                               figures.moment(*mean_day)));
  if (const auto from = plan.air.typical_from(); from && from != mean_day)
    page.paragraph(air_item,
                   fmt::format("From {} on the air is typical, not forecast: hours from then "
                               "on may move.",
                               figures.moment(*from)));
  write_wood(page, plan, figures);
  page.paragraph(air_item, fmt::format("Air over the work moves at {}.",
                                       figures.air_speed(plan.job.room.air_speed).text()));
}

}  // namespace tackfree
