#include "tackfree/document/left_over_section.hpp"

#include "tackfree/plan/stock.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/left_over_words.hpp"
#include "tackfree/words/step_words.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// With the coatings that it concerns, where it does not concern all of them.
std::string waste_title(const WasteToShed& waste, const Plan& plan) {
  if (waste.coatings.size() == plan.shopping.coatings.size()) return waste.text.what;
  std::vector<std::string> names;
  for (const std::size_t coating : waste.coatings)
    names.push_back(cut_to(longest_name, plan.job.coatings.at(coating).name));
  return fmt::format("{} ({})", waste.text.what, fmt::join(names, ", "));
}

void write_waste(Page& page, const Plan& plan) {
  if (plan.left_over.waste.empty()) return;
  page.subheading("How to get rid of it");
  page.paragraph(Lead::plain(2),
                 "The labels, the safety data sheets and your local rules go before this.");
  for (const WasteToShed& waste : plan.left_over.waste)
    page.paragraph(Lead::item(), fmt::format("{}: {}", waste_title(waste, plan), waste.text.act));
  if (std::ranges::any_of(plan.shopping.coatings, [&](const CoatingPurchase& purchase) {
        return plan.job.coatings.at(purchase.coating).dries_by_oxidation;
      }))
    page.paragraph(Lead::item(), "Oily rags: the same evening, as the caution on them says.");
}

void write_tins_now(Page& page, const std::vector<UsedTin>& tins, const Coating* coating,
                    const WorkAtHand& work, const Figures& figures) {
  const Date today = figures.local_date(work.now);
  bool any = false;
  for (const UsedTin& tin : tins) {
    if (tin.left.volume < millilitres(0.5)) continue;
    TinLeft left{.left = tin.left.volume, .opened_on = tin.left.opened_on};
    if (coating != nullptr) left.keeps_until = keeps_until(*coating, left.opened_on);
    left.too_old = left.keeps_until && *left.keeps_until < today;
    page.paragraph(Lead::item(), tin_left_text(left, figures));
    any = true;
  }
  if (!any) page.paragraph(Lead::item(), "nothing");
}

}  // namespace

void write_tins_left(Page& page, const Plan& plan, const Figures& figures) {
  const LeftOver& left = plan.left_over;
  if (left.coatings.empty() && left.thinners.empty()) return;
  page.heading(chart_words::what_is_left);
  for (const CoatingLeft& coating : left.coatings)
    page.paragraph(
        Lead::item(),
        fmt::format("{}: {}", cut_to(longest_name, plan.job.coatings.at(coating.coating).name),
                    coating_left_text(coating, figures)));
  for (const ThinnerLeft& thinner : left.thinners)
    page.paragraph(Lead::item(),
                   fmt::format("{}: {}", thinner.liquid, thinner_left_text(thinner, figures)));
}

void write_left_over(Page& page, const Plan& plan, const Figures& figures) {
  write_tins_left(page, plan, figures);
  write_waste(page, plan);
}

void write_shelf(Page& page, const WorkAtHand& work) {
  const Figures figures(work.job);
  const auto coatings = used_tins(work.job, work.list);
  const std::vector<Volume> missing = tins_short(work.job, work.list);
  page.heading("In the tins now");
  for (std::size_t c = 0; c < coatings.size(); ++c) {
    const Coating& coating = work.job.coatings[c];
    page.subheading(fmt::format("{} ({})", coating.name, coating.class_title));
    write_tins_now(page, coatings[c], &coating, work, figures);
    if (missing[c] > Volume())
      page.paragraph(Lead::look(),
                     fmt::format("The log takes {} more than it knows tins of: log the tin it "
                                 "came from.",
                                 figures.volume(missing[c]).text()));
  }
  for (const UsedThinner& thinner : used_thinners(work.job, work.list)) {
    if (thinner.tins.empty()) continue;
    page.subheading(thinner.name);
    write_tins_now(page, thinner.tins, nullptr, work, figures);
  }
}

}  // namespace tackfree
