#include "tackfree/document/outlook_section.hpp"

#include "tackfree/words/figures.hpp"
#include "tackfree/words/step_words.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr Lead item = Lead::item();
/// Factors nearer to 1 than this are left out of the sentence; rounding to the minute is one.
constexpr double least_told = 0.002;

std::string told(Origin origin, const std::string& source) {
  return source.empty() ? std::string(word_for(origin))
                        : fmt::format("{}: {}", word_for(origin), source);
}

void write_gates(Page& page, const Job& job, const CoatOutlook& outlook, const Figures& figures) {
  const CoatingLimits& limits = job.coatings.at(outlook.coating).limits;
  if (outlook.gates.empty())
    page.paragraph(item, "No rule of the air forbids a coat at this hour.");
  for (const GateAt& gate : outlook.gates) {
    const GateOrigin origin = origin_of(limits, gate.gate);
    page.paragraph(Lead::look(), fmt::format("{} [{}]. {}", gate_words(gate.gate, limits, figures),
                                             told(origin.origin, origin.source),
                                             gate.opens ? fmt::format("Next kept by a coat at {}.",
                                                                      figures.moment(*gate.opens))
                                                        : "Not kept within two weeks."));
  }
  if (!outlook.gates.empty() && outlook.all_open)
    page.paragraph(item, fmt::format("All rules are kept by a coat at {}.",
                                     figures.moment(*outlook.all_open)));
}

/// Is the coat dry to recoat only after it must be sanded?
bool is_dry_too_late(const CoatOutlook& outlook) {
  return std::any_of(outlook.stages.begin(), outlook.stages.end(), [&](const auto& why) {
    return why.stage == Stage::recoat && why.ends > *outlook.recoat_unsanded_until;
  });
}

void write_advice(Page& page, const CoatOutlook& outlook, const Figures& figures) {
  if (outlook.best)
    page.paragraph(item,
                   fmt::format("Best full hour of the coming seven days: {}, dry for the next "
                               "coat after {}.",
                               figures.moment(outlook.best->at), wait_text(outlook.best->wait)));
  if (outlook.recoat_unsanded_until)
    page.paragraph(item, fmt::format("Recoat without sanding until {}; the warmest hour counts.{}",
                                     figures.moment(*outlook.recoat_unsanded_until),
                                     is_dry_too_late(outlook)
                                         ? " It is not dry to recoat by then: sand before the next "
                                           "coat."
                                         : ""));
  if (outlook.blush == BlushRisk::some)
    page.paragraph(item,
                   "It may blush: the air is less than 11 K (20 F) above its dew point. Wait "
                   "for drier air or warm the room (practice).");
  if (outlook.blush == BlushRisk::high)
    page.paragraph(item,
                   "It is likely to blush: over 65 % RH, near the dew point. Wait for drier "
                   "air or warm the room (practice).");
  page.paragraph(item, fmt::format("Wood kept in this air would settle at {} moisture.",
                                   percent_text(outlook.wood_moisture)));
  if (outlook.typical_from && *outlook.typical_from <= outlook.applied)
    page.paragraph(item, "All of this rests on typical air: hours may move.");
}

}  // namespace

std::string explanation_text(const DryingExplanation& why) {
  std::string label = exact_hours_text(why.label.value);
  if (why.label_least)
    label += fmt::format(" (the label's {} to {})", exact_hours_text(*why.label_least),
                         exact_hours_text(why.label.value));
  std::vector<std::string> factors;
  const auto add = [&](std::string_view name, const TimeFactor& factor) {
    if (std::abs(factor.value - 1.0) >= least_told)
      factors.push_back(fmt::format("{} {} [{}]", exact_factor_text(factor.value), name,
                                    told(factor.origin, factor.source)));
  };
  add("temperature", why.temperature);
  add("humidity", why.humidity);
  add("film", why.film);
  add("air movement", why.air_movement);
  add("your own drying so far", why.slowness);
  add("not before the label's hours or an earlier stage", why.held);
  std::string text = fmt::format("{} [{}]", label, told(why.label.origin, why.label.source));
  for (const std::string& factor : factors) text += " x " + factor;
  text += fmt::format(" = {}", exact_hours_text(why.wait()));
  if (why.outside_label > 0)
    text += fmt::format("; {} of it outside the label's temperatures: extrapolated",
                        percent_text(fraction(why.outside_label)));
  return text + ".";
}

void write_outlook(Page& page, const Job& job, const CoatOutlook& outlook) {
  const Figures figures(job);
  page.paragraph(
      Lead::plain(),
      fmt::format("{} put on at {}, in {} minutes", job.coatings.at(outlook.coating).name,
                  figures.moment(outlook.applied), outlook.putting_on.count()));
  page.paragraph(Lead::plain(), fmt::format("Air {}, {}, dew point {}; boards {}.",
                                            figures.temperature(outlook.air.temperature).text(),
                                            humidity_text(outlook.humidity),
                                            figures.temperature(outlook.dew_point).text(),
                                            figures.temperature(outlook.surface).text()));
  page.heading("May it be put on?");
  write_gates(page, job, outlook, figures);
  page.heading("When it is dry, and why then");
  for (const DryingExplanation& why : outlook.stages) {
    page.line(2, fmt::format("{}: {}", word_for(why.stage), figures.moment(why.ends)));
    page.paragraph(Lead::plain(4), explanation_text(why));
  }
  for (const Stage stage : outlook.never)
    page.line(2, fmt::format("{}: not within the plan's horizon", word_for(stage)));
  page.heading("Good to know");
  write_advice(page, outlook, figures);
  page.blank();
  page.paragraph(Lead::plain(), job.data.texts.deference);
}

}  // namespace tackfree
