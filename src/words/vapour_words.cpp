#include "tackfree/words/vapour_words.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

constexpr std::array<std::string_view, 4> plain{"closed", "ajar", "open", "open and fan on"};
constexpr std::array<std::string_view, 4> keys{"closed", "ajar", "open", "open_and_fan"};

std::string_view plain_word(Opening opening) { return plain.at(static_cast<std::size_t>(opening)); }
std::string_view key_of(Opening opening) { return keys.at(static_cast<std::size_t>(opening)); }

/// The least flow for what binds: exposure while the room is under the explosive shares, else
/// those.
std::string flow_sentence(const RoomJudgement& room, VapourLimit limit, std::string_view aim,
                          const Figures& figures) {
  const std::optional<AirFlow>& flow = room.limit(limit).least_flow;
  if (!flow) return fmt::format("No flow was found that {}. ", aim);
  return fmt::format("At least {} of outdoor air all the time {} by this estimate. ",
                     figures.air_flow(*flow).text(), aim);
}

}  // namespace

std::string_view words_for(Opening opening) {
  constexpr std::array<std::string_view, 4> said{"closed", "ajar to outdoors", "open to outdoors",
                                                 "open to outdoors and fan on"};
  return said.at(static_cast<std::size_t>(opening));
}

std::string words_for(const AiringHabit& habit) {
  const bool aired_after = habit.after != Opening::closed && habit.after_for > Duration{};
  if (habit.while_coating == Opening::closed && !aired_after) return "closed all the time";
  return fmt::format(
      "{} while coating, then {}", words_for(habit.while_coating),
      aired_after ? fmt::format("{} for {:g} h", plain_word(habit.after), habit.after_for.in(hours))
                  : "closed");
}

std::string job_text(const AiringHabit& habit) {
  return fmt::format(R"("while_coating": "{}", "after": {{ "state": "{}", "hours": {:g} }})",
                     key_of(habit.while_coating), key_of(habit.after), habit.after_for.in(hours));
}

std::vector<std::string> to_switch_off(const Job& job) {
  std::vector<std::string> names = job.room.ignition_sources;
  if (heater_may_light(job)) names.emplace_back("the heater");
  return names;
}

std::string share_text(double share) {
  if (share < 0.001) return "under 0.1 %";
  return share < 0.01 ? fmt::format("{:.1f} %", 100 * share) : fmt::format("{:.0f} %", 100 * share);
}

std::string times_text(double times) {
  if (times < 0.01) return "under 0.01 times";
  return times < 0.095 ? fmt::format("{:.2f} times", times) : fmt::format("{:.1f} times", times);
}

std::string uncounted_clause(const RoomJudgement& room) {
  if (room.uncounted.empty()) return {};
  std::vector<std::string_view> names;
  for (const Uncounted each : room.uncounted) names.push_back(key_of(each));
  return fmt::format(" ({} not counted)", fmt::join(names, " and "));
}

std::string uncounted_sentence(const RoomJudgement& room) {
  if (room.uncounted.empty()) return {};
  std::vector<std::string_view> names;
  for (const Uncounted each : room.uncounted) names.push_back(key_of(each));
  return fmt::format(
      " No sum here holds {}: nobody says how much of it comes off, so no figure here means that "
      "it is below its own limit. Go by the safety data sheet.",
      fmt::join(names, " and "));
}

std::string vapour_estimate(const RoomJudgement& room) {
  return fmt::format(
      " By this estimate the air of the room, {}, reaches {} of the lower explosive limit, {} the "
      "15-minute and {} the 8-hour limit of exposure at work{}. Near the wet work it is stronger.",
      words_for(room.habit), share_text(room.limit(VapourLimit::quarter_explosive).share / 4),
      times_text(room.limit(VapourLimit::fifteen_minutes).share),
      times_text(room.limit(VapourLimit::eight_hours).share), uncounted_clause(room));
}

std::string vapour_remedy(const RoomJudgement& room, const Figures& figures) {
  std::string text;
  if (room.stops())
    text =
        "The vapour can explode: do not put this coat on in this room like this. Work outdoors, in "
        "a professional booth, with less in a day, or with more air. No flame, no spark. " +
        flow_sentence(room, VapourLimit::quarter_explosive,
                      "keeps the room under a quarter of the explosive limit", figures);
  if (room.limit(VapourLimit::tenth_explosive).share >= 1) {
    if (text.empty()) text = "The vapour can burn: every flame and spark removed, pilots off. ";
    text += flow_sentence(room, VapourLimit::tenth_explosive, "keeps it under a tenth of that",
                          figures);
  }
  const auto& quarter_hour = room.limit(VapourLimit::fifteen_minutes);
  const auto& day = room.limit(VapourLimit::eight_hours);
  if (std::max(quarter_hour.share, day.share) > 1) {
    text += "More air or a smaller coat; stay out otherwise. ";
    text += flow_sentence(room,
                          quarter_hour.least_flow > day.least_flow ? VapourLimit::fifteen_minutes
                                                                   : VapourLimit::eight_hours,
                          "keeps the room under the limits of exposure", figures);
  } else if (std::max(quarter_hour.share, day.share) > 0.5) {
    text += "The air comes near the limits of exposure: more air helps. ";
  }
  if (std::ranges::any_of(room.stretches, &StretchJudgement::rises_again))
    text +=
        "The airing ends too early: wet coats go on giving off vapour, and in the closed room it "
        "rises above the limits of exposure again. ";
  return text;
}

}  // namespace tackfree
