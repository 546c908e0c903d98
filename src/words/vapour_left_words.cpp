#include "tackfree/words/vapour_left_words.hpp"

#include "tackfree/fumes/vapour_left.hpp"
#include "tackfree/words/respirator_words.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Did a coat before `at` put mist of isocyanates into the air within a day?
bool isocyanates_before(const Plan& plan, Instant at) {
  return std::ranges::any_of(plan.schedule.steps, [&](const DatedStep& step) {
    const Operation& op = plan.list.operations.at(step.operation);
    return op.kind == OperationKind::coat && op.coating && op.method && step.begin() < at &&
           at - step.begin() < one_day &&
           sprays_isocyanates(plan.job.coatings.at(*op.coating),
                              plan.job.data.methods.at(*op.method));
  });
}

}  // namespace

std::string vapour_left_words(const Plan& plan, const DatedStep& step, const Figures& figures) {
  const Operation& op = plan.list.operations.at(step.operation);
  const bool fits = op.kind == OperationKind::fit_hardware;
  if (!plan.room || (!fits && !op.grit)) return {};
  const auto work = op.power_sanding ? WorkAmongVapour::with_sparks : WorkAmongVapour::by_hand;
  auto until = vapour_left_until(*plan.room, step.begin(), work);
  if (until) until = figures.full_hour_up(*until);
  const bool cleared = isocyanates_before(plan, step.begin());
  if (!until && !cleared) return {};
  const bool today = until && figures.local_date(*until) == figures.local_date(step.begin());
  std::string text;
  if (until)
    text = fmt::format(
        "Vapour of the wet coats stays in the room until {} by this estimate: {} outdoors, or "
        "later.",
        today ? figures.clock(*until) : figures.moment(*until), fits ? "do it" : "sand");
  if (cleared)
    text += fmt::format(
        "{}Not before the booth has cleared of isocyanates, as the safety data sheet says.",
        text.empty() ? "" : " ");
  return text;
}

}  // namespace tackfree
