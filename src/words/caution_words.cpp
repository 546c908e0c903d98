#include "tackfree/words/caution_words.hpp"

#include "tackfree/words/figures.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// How much vapour there is, as sentences that begin with a blank.
std::string amounts_of(const RaisedCaution& caution, const Plan& plan, const Figures& figures) {
  std::string text;
  if (caution.in_a_day)
    text += fmt::format(
        " Up to {} evaporate in the heaviest 24 hours, from all coats and the "
        "cleaning of tools together.",
        figures.mass(*caution.in_a_day).text());
  if (caution.undated)
    text += fmt::format(
        " What has no date, all of it in the still, closed room, would be {}, {} of the lower "
        "explosive limit ({} assumed).",
        figures.vapour(caution.undated->bound).text(),
        percent_text(fraction(caution.undated->explosive_share)),
        figures.vapour(assumed_explosive_limit).text());
  if (caution.of_room && plan.room) text += vapour_estimate(*plan.room);
  return text;
}

std::string_view undated_remedy(const UndatedVapour& vapour) {
  if (vapour.explosive_share >= can_explode_share)
    return "The vapour can explode: do not put this much on in this room. Coat outdoors, in a "
           "professional booth, or less in a day. No flame, no spark. ";
  if (vapour.explosive_share >= can_burn_share)
    return "The vapour can burn: more air, every flame and spark removed, pilots off. ";
  return "";
}

/// What to do before all else, as sentences that end in a blank.
std::string remedies_for(const RaisedCaution& caution, const Plan& plan, const Figures& figures) {
  std::string text;
  if (caution.sprayed_isocyanates)
    text +=
        "Do not spray this at home: it takes a supplied-air respirator and a professional booth. ";
  if (caution.mist) {
    const std::string beside =
        caution.mist->beside_source
            ? fmt::format(" with {} in it", fmt::join(to_switch_off(plan.job), ", "))
            : "";
    text += fmt::format("Do not spray this in {} room{}: the mist can explode. ",
                        caution.mist->room_closed ? "a closed" : "this", beside);
  }
  if (caution.of_room && plan.room) text += vapour_remedy(*plan.room, figures);
  if (caution.undated) text += undated_remedy(*caution.undated);
  return text;
}

/// What else is to be known, as sentences that begin with a blank.
std::string additions_to(const RaisedCaution& caution, const Job& job) {
  std::string text;
  if (caution.volume_unknown)
    text += " Give the room's volume in the job and the vapour is estimated.";
  text += cartridge_sentence(job, caution.no_cartridges);
  if (caution.names_sources) text += fmt::format(" Here: {}.", fmt::join(to_switch_off(job), ", "));
  if (caution.data_sheet_word)
    text += fmt::format(
        " The safety data sheet has a signal word of its own; for this flash point it is {}.",
        *caution.data_sheet_word == DataSheetWord::danger ? "Danger" : "Warning");
  return text;
}

}  // namespace

std::vector<Caution> caution_texts(const Plan& plan) {
  const Figures figures(plan.job);
  std::vector<Caution> texts;
  for (const RaisedCaution& caution : plan.cautions) {
    Caution text = caution.text;
    text.hazard += amounts_of(caution, plan, figures);
    text.avoid =
        remedies_for(caution, plan, figures) + text.avoid + additions_to(caution, plan.job);
    texts.push_back(std::move(text));
  }
  return texts;
}

}  // namespace tackfree
