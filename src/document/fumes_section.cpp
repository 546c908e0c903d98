#include "tackfree/document/fumes_section.hpp"

#include "tackfree/words/caution_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

std::string list_of(const std::vector<std::string>& names) {
  return fmt::format("{}", fmt::join(names, ", "));
}

std::vector<std::string> solvent_titles(const Plan& plan) {
  std::vector<std::string> titles;
  for (const std::size_t solvent : plan.room->solvents)
    titles.push_back(plan.job.data.solvents.at(solvent).title);
  return titles;
}

/// `1.7 open`
std::string changes_text(const Plan& plan, Opening opening) {
  constexpr std::array<std::string_view, 4> how{"closed", "ajar", "open", "open with the fan on"};
  const ChangeRate working = working_changes(plan.job.room, plan.job.data.air_changes, opening);
  return fmt::format("{:.2g} {}", working.in(per_hour), how.at(static_cast<std::size_t>(opening)));
}

bool cleaned_with_solvent(const Plan& plan) {
  return std::ranges::any_of(plan.volumes.coatings, [&](const CoatingNeed& need) {
    return !plan.job.coatings.at(need.coating).cleaner_mix.empty();
  });
}

/// What the estimate stands on.
void write_basis(Page& page, const Plan& plan, const Figures& figures) {
  const Room& room = plan.job.room;
  const AirChanges& changes = plan.job.data.air_changes;
  page.paragraph(Lead::item(),
                 fmt::format("Room {}; solvents: {}.", figures.room(*room.volume).text(),
                             list_of(solvent_titles(plan))));
  std::vector<std::string> openings{changes_text(plan, Opening::closed),
                                    changes_text(plan, Opening::ajar),
                                    changes_text(plan, Opening::open)};
  if (room.fan) openings.push_back(changes_text(plan, Opening::open_and_fan));
  page.paragraph(
      Lead::item(),
      fmt::format("Effective air changes per hour: {} (the real flow divided by {:g}{}, because "
                  "rooms mix poorly).",
                  list_of(openings), changes.mixing_one_opening.value,
                  room.fan ? fmt::format(", by {:g} with the fan across from the opening",
                                         changes.mixing_through_draft.value)
                           : ""));
  if (room.fan && !room.fan->measured)
    page.paragraph(Lead::item(), fmt::format("Of the fan's rated {} only {} are counted on.",
                                             figures.air_flow(room.fan->flow).text(),
                                             percent_text(changes.fan_delivers.value)));
  page.paragraph(Lead::item(),
                 fmt::format("{}: {}.",
                             plan.room->habit_given ? "Airing as you gave it"
                                                    : "You gave no airing, so none is counted on",
                             words_for(plan.room->habit)));
  if (cleaned_with_solvent(plan))
    page.paragraph(
        Lead::item(),
        fmt::format("Counted with the coats: {} of cleaner for the tools each session, "
                    "all of it. Clean them while the room is open, or outdoors, and "
                    "close the jar.",
                    figures.volume(plan.job.data.shop.cleaner_per_session.value).text()));
  std::vector<std::string> limits;
  for (const std::size_t index : plan.room->solvents) {
    const Solvent& solvent = plan.job.data.solvents.at(index);
    limits.push_back(fmt::format("{} {} ({})", solvent.title,
                                 figures.exposure(solvent.limit_8h.value).text(),
                                 solvent.limits_by));
  }
  page.paragraph(
      Lead::item(),
      fmt::format("Limits over 8 hours, the lowest of those that this program holds: {}.{}",
                  list_of(limits), uncounted_sentence(*plan.room)));
}

bool needs_no_flow(const LimitJudgement& limit) {
  return limit.least_flow && *limit.least_flow <= AirFlow{};
}

void write_limits(Page& page, const Plan& plan, const Figures& figures) {
  constexpr std::array<std::string_view, vapour_limit_count> names{
      "explosive, 25 %", "explosive, 10 %", "work, 15 min", "work, 8 h"};
  Table table;
  table.head = {"limit", "reached", "when", "least flow"};
  for (std::size_t i = 0; i < names.size(); ++i) {
    const LimitJudgement& limit = plan.room->limits.at(i);
    table.rows.push_back({std::string(names.at(i)), times_text(limit.share),
                          figures.moment(limit.at),
                          !limit.least_flow      ? "none found"
                          : needs_no_flow(limit) ? "under it closed"
                                                 : figures.air_flow(*limit.least_flow).text()});
  }
  page.table(table);
  page.paragraph(
      Lead::plain(2),
      fmt::format(
          "Least flow: outdoor air all the time, {:g}-fold for bad mixing, to stay under the "
          "limit. Each figure is the worst of three paces of drying: as usual, half and "
          "double. Limits at work are for healthy adults; no limit is made for homes.{}",
          plan.room->flow_mixing,
          std::ranges::any_of(plan.room->limits, needs_no_flow)
              ? " \"Under it closed\" is said of that one limit, by this estimate: air the room "
                "all the same."
              : ""));
}

std::string until_text(const RoomJudgement& room, const StretchJudgement& stretch,
                       const Figures& figures) {
  const auto when = [&](Instant at) {
    return figures.local_date(at) == figures.local_date(stretch.coating.begin) ? figures.clock(at)
                                                                               : figures.moment(at);
  };
  std::vector<std::string> open;
  if (const auto& span = stretch.airing_goes_on)
    open.push_back(
        fmt::format("{} from before to {}", words_for(span->opening), when(span->time.end)));
  for (const AiringSpan& span : stretch.airing)
    open.push_back(fmt::format("{} {} to {}", words_for(span.opening), when(span.time.begin),
                               when(span.time.end)));
  std::string text = open.empty() ? "closed" : list_of(open);
  text += fmt::format("; an 8-hour mean of at most {} the limits", times_text(stretch.eight_hours));
  const std::string uncounted = uncounted_clause(room);
  text += stretch.rises_again
              ? ". Once the airing ends the level rises above the 8-hour limits again. It is "
                "estimated to "
              : ". The level is estimated to ";
  if (!stretch.under_limit_at)
    text += fmt::format("stay above the 8-hour limits{} until the next coats", uncounted);
  else
    text += fmt::format("drop below the 8-hour limits{} {}", uncounted,
                        *stretch.under_limit_at <= stretch.coating.end
                            ? "as soon as you stop coating"
                            : "by " + when(*stretch.under_limit_at));
  if (stretch.under_tenth_at)
    text += fmt::format(", and below a tenth of them by {}", when(*stretch.under_tenth_at));
  return text + ".";
}

void write_stretches(Page& page, const Plan& plan, const Figures& figures) {
  page.blank();
  page.paragraph(Lead::plain(2),
                 fmt::format("{} The level is that of a moment: it may pass the limits of an "
                             "8-hour mean while the mean stays below them.",
                             plan.room->proposed
                                 ? "With your own airing; days that need more tell a wider one."
                                 : "With your own airing."));
  for (const StretchJudgement& stretch : plan.room->stretches)
    page.paragraph(Lead::plain(2),
                   fmt::format("{}: {} of solvent; {}", figures.day(stretch.coating.begin),
                               figures.mass(stretch.solvent).text(),
                               until_text(*plan.room, stretch, figures)));
}

void write_proposal(Page& page, const Plan& plan) {
  const RoomJudgement& room = *plan.room;
  if (room.verdict == HabitVerdict::enough) {
    page.paragraph(Lead::item(),
                   fmt::format("This airing keeps the room under these limits by this estimate{}.",
                               uncounted_clause(room)));
    return;
  }
  if (!room.proposed) {
    page.paragraph(
        Lead::look(),
        "This airing is too little, and no habit that was tried serves: use more air than "
        "these openings bring, coat less in a day, or work outdoors.");
    return;
  }
  page.paragraph(
      Lead::look(),
      fmt::format("This airing is too little: {} keeps the room under these limits by this "
                  "estimate{}, with an 8-hour mean of at most {} the limits. Plan with it by "
                  "--airing proposed, or write under room: "
                  "\"airing\": {{ {} }}",
                  words_for(*room.proposed), uncounted_clause(room),
                  times_text(room.proposed_eight_hours), job_text(*room.proposed)));
}

/// Which air the hours of the plan count on.
std::string_view counted_on(const Plan& plan) {
  if (!plan.cold_airing) return "";
  if (!plan.cold_airing->with_airing)
    return " Your dates are not moved for it: the air you gave counts as the room's own.";
  if (plan.aired && plan.aired->every_chance)
    return " The dates of this plan count the room as open whenever you could be coating, so it "
           "may well be warmer.";
  return " The dates of this plan already allow for that.";
}

std::string nearest_cold(const ColdAiring& cold, const Figures& figures) {
  return fmt::format(
      " On {} {} at {}. Wet coats need at least {}{}.", figures.moment(cold.at),
      cold.with_airing ? "the room is estimated, with its heating and airing," : "its air is",
      figures.temperature(cold.room).text(), figures.temperature(cold.bears).text(),
      cold.too_cold() ? " until touch-dry, or they can stay soft, dull or wrinkled" : "");
}

std::string nearest_dew(const ColdAiring& cold, const Figures& figures) {
  return fmt::format(
      " Moisture can settle in the wet coat: on {} the boards are {} above the dew point, and it "
      "should be {}.",
      figures.moment(cold.dew_at), figures.temperature_difference(cold.spread).text(),
      figures.temperature_difference(cold.margin).text());
}

/// A sealed heater may run on beside vapour that burns, and the dates count on it.
std::string_view warmth_choice(const Job& job) {
  if (warmed_by_sealed_heater(job))
    return "more heat: your heater is sealed, so leave it on, as the dates count on it";
  return "heat before, with no flame or glowing heater on while vapour is in the room";
}

bool fan_runs_on(const Plan& plan) {
  const AiringHabit& habit = plan.room->habit;
  return habit.after == Opening::open_and_fan && habit.after_for > Duration();
}

/// Which way the air goes. Source: EPA and CPSC on painting indoors, a fan in the window blows out
/// (as quoted by others); that an ordinary fan stays out of flammable vapour: common practice.
std::string_view way_of_the_air(bool flammable) {
  return flammable
             ? "Move the air one way: in from outdoors at one opening, out to the outdoors at "
               "another. A household fan is not made for flammable vapour: it stands where "
               "the clean air comes in and blows in. Only a fan rated for such vapour draws "
               "it out, as label and local codes say."
             : "Move the air one way: a fan in the window or outer door blows out, and fresh "
               "air comes in from outdoors at another opening.";
}

/// Airing against warmth, with the choices there are.
void write_cold(Page& page, const Plan& plan, const Figures& figures) {
  constexpr TemperatureDifference close = kelvins(5);
  const std::optional<ColdAiring>& cold = plan.cold_airing;
  const bool broken = cold && (cold->too_cold() || cold->dewy());
  std::string text = "Airing cools the room.";
  text += counted_on(plan);
  if (cold && cold->room - cold->bears < close) text += nearest_cold(*cold, figures);
  if (cold && cold->dewy()) text += nearest_dew(*cold, figures);
  page.paragraph(broken ? Lead::look() : Lead::item(),
                 text + fmt::format(" The choices: {}; coat less at a time; a milder day; another "
                                    "coating.",
                                    warmth_choice(plan.job)));
}

void write_explosive(Page& page, const Plan& plan) {
  const LimitJudgement& limit = plan.room->limit(VapourLimit::quarter_explosive);
  page.paragraph(
      Lead::danger(),
      fmt::format(
          "Stop: by this estimate the vapour reaches {} of what explodes, {}. Do not coat in "
          "this room like this. Under a quarter of it: {}. See Fumes and airing.",
          share_text(limit.share / 4), words_for(plan.room->habit),
          limit.least_flow ? fmt::format("at least {} of outdoor air",
                                         Figures(plan.job).air_flow(*limit.least_flow).text())
                           : "no air flow was found"));
}

std::string_view heater_words(std::optional<HeaterKind> kind) {
  if (kind == HeaterKind::flame) return "Your heater has a flame";
  if (kind == HeaterKind::glowing) return "Your heater glows";
  return "If your heater has a flame or glows, it can light the vapour";
}

/// The hours in which the heater of the job runs while vapour that burns may be in the room.
void write_heater_clash(Page& page, const Plan& plan) {
  constexpr std::size_t most_told = 3;
  if (!plan.heater_clash) return;
  const HeaterClash& clash = *plan.heater_clash;
  const Figures figures(plan.job);
  std::vector<std::string> hours;
  for (const Interval& each : clash.hours) {
    if (hours.size() == most_told) break;
    const bool one_day = figures.local_date(each.begin) == figures.local_date(each.end);
    hours.push_back(fmt::format("{} to {}", figures.moment(each.begin),
                                one_day ? figures.clock(each.end) : figures.moment(each.end)));
  }
  const std::size_t more = clash.hours.size() - hours.size();
  page.paragraph(
      clash.kind ? Lead::danger() : Lead::warning(),
      fmt::format("{}, and this job runs it while flammable vapour may be in the room: {}{}. Heat "
                  "before you open the tin, and keep it off in these hours. The dates count on its "
                  "warmth then: take these hours out of its own and plan again.{}",
                  heater_words(clash.kind), fmt::join(hours, "; "),
                  more > 0 ? fmt::format("; and {} more times", more) : "",
                  clash.kind ? "" : " The job can say what it is: \"heater_is\"."));
}

}  // namespace

Lead lead_of(const Caution& caution, std::size_t columns) {
  if (caution.word == "DANGER") return Lead::danger(columns);
  if (caution.word == "WARNING") return Lead::warning(columns);
  return Lead::labelled(caution.word, columns);
}

void write_vapour_dangers(Page& page, const Plan& plan) {
  if (plan.room && plan.room->stops()) write_explosive(page, plan);
  write_heater_clash(page, plan);
}

void write_stop(Page& page, const Plan& plan) {
  const bool stops = plan.room && plan.room->stops();
  write_vapour_dangers(page, plan);
  for (const Caution& caution : caution_texts(plan))
    if (caution.comes_first && !(stops && caution.key.ends_with("_vapour")))
      page.paragraph(lead_of(caution), caution.hazard + " " + first_sentence(caution.avoid));
}

void write_fumes(Page& page, const Plan& plan, const Figures& figures) {
  page.heading("Fumes and airing");
  if (!plan.room) {
    page.paragraph(Lead::item(),
                   plan.job.room.volume
                       ? "No coat with a date gives off solvent, so there is nothing to estimate."
                       : "The room's volume is not known: give it under room, and how "
                         "you air it, and the vapour is estimated.");
    return;
  }
  write_basis(page, plan, figures);
  write_limits(page, plan, figures);
  write_stretches(page, plan, figures);
  page.blank();
  write_proposal(page, plan);
  write_cold(page, plan, figures);
  if (plan.job.room.attached_to_house)
    page.paragraph(Lead::item(),
                   "Keep the door to the rest of the house shut: in 15 houses some 6.5 % of the "
                   "air came out of an attached garage (Batterman et al. 2007).");
  page.paragraph(Lead::item(), std::string(way_of_the_air(!plan.flammable.empty())));
  if (fan_runs_on(plan))
    page.paragraph(Lead::item(),
                   "The fan runs on after you have left: on a timer, or somebody turns it off.");
  page.paragraph(Lead::item(),
                 "This is an estimate of the room's mean, not leave to go in or to do without a "
                 "mask.");
}

}  // namespace tackfree
