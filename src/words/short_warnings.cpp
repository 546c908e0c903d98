#include "tackfree/words/short_warnings.hpp"

#include "tackfree/words/display_text.hpp"
#include "tackfree/words/step_words.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

constexpr std::string_view danger_word = "DANGER", warning_word = "WARNING";

/// The gravest first: what kills at once, what burns the house down, what harms over years.
std::ptrdiff_t rank(std::string_view key) {
  constexpr std::array<std::string_view, 14> keys{explosion_key,
                                                  heater_key,
                                                  "spraying",
                                                  "isocyanates",
                                                  "ignition",
                                                  "ethanol_vapour",
                                                  "strong_solvent_vapour",
                                                  "solvent_vapour",
                                                  "waterborne_vapour",
                                                  "oily_rags",
                                                  "formaldehyde",
                                                  "attached_house",
                                                  "stored_quantity",
                                                  "children"};
  return std::ranges::find(keys, key) - keys.begin();
}

/// `the water heater, the freezer and 2 more things that you listed`.
std::string listed(const std::vector<std::string>& names) {
  constexpr std::size_t most_named = 4;
  std::vector<std::string> shown;
  for (const std::string& name : names)
    if (shown.size() < most_named)
      shown.push_back((name.starts_with("the ") ? "" : "the ") + cut_to(longest_name, name));
  const std::size_t more = names.size() - shown.size();
  if (more > 0) shown.push_back(fmt::format("{} more that you listed", more));
  if (shown.size() < 2) return fmt::format("{}", fmt::join(shown, ""));
  const std::string last = shown.back();
  shown.pop_back();
  return fmt::format("{} and {}", fmt::join(shown, ", "), last);
}

ShortWarning explosion(const Plan& plan) {
  const LimitJudgement& limit = plan.room->limit(VapourLimit::quarter_explosive);
  return {std::string(explosion_key), danger_word,
          fmt::format("The vapour can explode: do not coat in this room like this. By estimate it "
                      "reaches {} of what explodes ({}).",
                      share_text(limit.share / 4), words_for(plan.room->habit))};
}

ShortWarning heater(const HeaterClash& clash) {
  std::string_view what = "If your heater has a flame or glows, it can light the vapour";
  if (clash.kind == HeaterKind::flame) what = "The flame of your heater can light the vapour";
  if (clash.kind == HeaterKind::glowing) what = "Your glowing heater can light the vapour";
  return {std::string(heater_key), clash.kind ? danger_word : warning_word,
          fmt::format("{}: heat first, and turn it off before you open the tin.", what)};
}

/// What the room's judgement asks for.
std::string room_text(const RoomJudgement& room, const std::string& in_short) {
  const double exposure = std::max(room.limit(VapourLimit::fifteen_minutes).share,
                                   room.limit(VapourLimit::eight_hours).share);
  const std::string air = room.proposed ? fmt::format("keep it {}", words_for(*room.proposed))
                                        : std::string("more air, less at a time, or outdoors");
  if (room.limit(VapourLimit::tenth_explosive).share >= 1)
    return fmt::format("The vapour can burn, by estimate: no flame or spark; {}.", air);
  if (exposure > 1) return fmt::format("Too much vapour to breathe, by estimate: {}.", air);
  if (std::ranges::any_of(room.stretches, &StretchJudgement::rises_again))
    return fmt::format("The airing ends too early, by estimate: {}.", air);
  return in_short;
}

std::string text_of(const RaisedCaution& caution, const Plan& plan) {
  const std::string& in_short = caution.text.in_short;
  if (caution.sprayed_isocyanates)
    return "Sprayed isocyanates can bring asthma: only in a booth, on supplied air.";
  if (caution.mist)
    return fmt::format("The mist can explode: do not spray in {} room{}.",
                       caution.mist->room_closed ? "a closed" : "this",
                       caution.mist->beside_source
                           ? fmt::format(" with {} in it", listed(to_switch_off(plan.job)))
                           : "");
  if (caution.names_sources)
    return fmt::format("Vapour can flash: turn off {} before you open the tin.",
                       listed(to_switch_off(plan.job)));
  if (caution.undated && caution.undated->explosive_share >= can_explode_share)
    return "Coats without a date can fill the room with vapour that explodes: coat outdoors.";
  if (caution.of_room && plan.room) return room_text(*plan.room, in_short);
  return in_short;
}

}  // namespace

std::vector<ShortWarning> short_warnings(const Plan& plan) {
  std::vector<ShortWarning> all;
  const bool stops = plan.room && plan.room->stops();
  if (stops) all.push_back(explosion(plan));
  if (plan.heater_clash) all.push_back(heater(*plan.heater_clash));
  for (const RaisedCaution& caution : plan.cautions) {
    const std::string_view word = caution.text.word == danger_word ? danger_word : warning_word;
    if (caution.text.word != word || (stops && caution.of_room)) continue;
    all.push_back({caution.text.key, word, text_of(caution, plan)});
  }
  std::ranges::stable_sort(all, {}, [](const ShortWarning& warning) {
    return std::pair(gravity(warning.word), rank(warning.key));
  });
  return all;
}

std::string off_words(const Plan& plan, const FlammableTime& time) {
  const std::vector<std::string> names = to_switch_off(plan.job);
  const Figures figures(plan.job);
  const Operation& coat =
      plan.list.operations.at(plan.schedule.steps.at(time.first_step).operation);
  const bool sprayed = coat.method && plan.job.data.methods.at(*coat.method).sprayed;
  const std::string them = names.size() == 1 ? "it" : "them";
  return fmt::format(
      "Before you open the tin, turn off {}{}. Leave {} off until {} by this estimate and until "
      "the "
      "smell is gone, then start {} by {} instructions.",
      listed(names), sprayed ? ", and do not spray in one room with " + them : "", them,
      figures.moment(figures.full_hour_up(time.time.end)), them,
      names.size() == 1 ? "its" : "their");
}

}  // namespace tackfree
