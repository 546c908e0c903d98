#include "tackfree/words/caution_words.hpp"

#include "tackfree/words/display_text.hpp"
#include "tackfree/words/figures.hpp"
#include "tackfree/words/respirator_words.hpp"
#include "tackfree/words/step_words.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <algorithm>

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
        "Do not spray this at home: only in a spray booth, on supplied air. Nobody without it goes "
        "in until the booth has cleared, as its instructions and the safety data sheet say. This "
        "plan has no hour for that. ";
  if (caution.mist && caution.mist->room_closed)
    text += "Do not spray this in a closed room: the mist can explode. ";
  if (caution.mist && caution.mist->beside_source)
    text += fmt::format("Do not spray this where these are: {}. The mist can explode. ",
                        fmt::join(to_switch_off(plan.job), ", "));
  if (caution.of_room && plan.room) text += vapour_remedy(*plan.room, figures);
  if (caution.undated) text += undated_remedy(*caution.undated);
  return text;
}

/// Coats that go on in air in which their vapour lights at any spark, each as a sentence.
std::string above_flash(const Plan& plan, const Figures& figures) {
  std::string text;
  for (const CoatedAboveFlash& each :
       coated_above_flash(plan.job, plan.list, plan.air, plan.schedule)) {
    const Coating& coating = plan.job.coatings.at(each.coating);
    text += fmt::format(
        " You coat with {} at {}, at or above its flash point of {}: a spark lights its vapour.",
        cut_to(longest_name, coating.name), figures.temperature(each.warmest).text(),
        figures.temperature(coating.flash_point->value).text());
  }
  return text;
}

/// What else is to be known, as sentences that begin with a blank.
std::string additions_to(const RaisedCaution& caution, const Plan& plan, const Figures& figures) {
  const Job& job = plan.job;
  std::string text;
  if (caution.volume_unknown)
    text += " Give the room's volume in the job and the vapour is estimated.";
  if (caution.respirator) text += respirator_sentences(*caution.respirator, job);
  if (caution.names_sources) text += fmt::format(" Here: {}.", fmt::join(to_switch_off(job), ", "));
  if (caution.text.key == "ignition") text += above_flash(plan, figures);
  if (caution.data_sheet_word)
    text += *caution.data_sheet_word == DataSheetWord::danger
                ? " The safety data sheet has a signal word of its own: for this flash point it is "
                  "Danger."
                : " The safety data sheet has a signal word of its own: Warning for this flash "
                  "point, and Danger where a hardener or another part asks for it.";
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
        remedies_for(caution, plan, figures) + text.avoid + additions_to(caution, plan, figures);
    texts.push_back(std::move(text));
  }
  return texts;
}

std::string rags_remedy(const Plan& plan) {
  const auto& texts = plan.job.data.texts.cautions;
  const auto found = std::ranges::find(texts, "oily_rags", &Caution::key);
  return found == texts.end() ? "" : found->avoid.substr(0, found->avoid.find(". ") + 1);
}

}  // namespace tackfree
