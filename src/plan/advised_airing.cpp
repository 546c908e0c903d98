#include "tackfree/plan/advised_airing.hpp"

#include <algorithm>
#include <iterator>
#include <set>

namespace tackfree {

namespace {

Opening opening_at(const std::vector<AiringSpan>& spans, Instant at) {
  const auto found = std::ranges::find_if(
      spans, [&](const AiringSpan& span) { return span.time.begin <= at && at < span.time.end; });
  return found == spans.end() ? Opening::closed : found->opening;
}

}  // namespace

std::vector<AiringSpan> airing_of(const Plan& plan, const AiringHabit& habit) {
  return airing_spans(coating_stretches(plan.list, plan.schedule), habit);
}

std::vector<AiringSpan> airing_of(const Plan& plan) {
  return airing_of(plan, plan.job.room.airing.value_or(AiringHabit()));
}

std::optional<AiringHabit> better_habit(const Plan& plan) {
  const bool too_little = plan.room && plan.room->verdict == HabitVerdict::too_little;
  return too_little ? plan.room->proposed : std::nullopt;
}

bool needs_more_air(const Plan& plan, const std::vector<AiringSpan>& spans) {
  const auto meets = [](const Interval& a, const Interval& b) {
    return a.begin < b.end && b.begin < a.end;
  };
  if (!plan.room) return false;
  return std::ranges::any_of(plan.room->stretches, [&](const StretchJudgement& stretch) {
    return stretch.too_little && std::ranges::any_of(spans, [&](const AiringSpan& span) {
             return meets(span.time, stretch.coating) ||
                    std::ranges::any_of(stretch.airing, [&](const AiringSpan& its) {
                      return meets(span.time, its.time);
                    });
           });
  });
}

std::vector<AiringSpan> wider_of(const std::vector<AiringSpan>& a,
                                 const std::vector<AiringSpan>& b) {
  std::set<Instant> changes;
  for (const auto* spans : {&a, &b})
    for (const AiringSpan& span : *spans) changes.insert({span.time.begin, span.time.end});
  std::vector<AiringSpan> wider;
  for (auto at = changes.begin(); at != changes.end() && std::next(at) != changes.end(); ++at) {
    const Opening opening = std::max(opening_at(a, *at), opening_at(b, *at));
    const Interval time{*at, *std::next(at)};
    if (!wider.empty() && wider.back().opening == opening && wider.back().time.end == time.begin)
      wider.back().time.end = time.end;
    else if (opening != Opening::closed)
      wider.push_back({time, opening});
  }
  return wider;
}

std::vector<std::vector<AiringSpan>> advised_airing(const Plan& plan) {
  std::vector<AiringSpan> spans = airing_of(plan);
  if (const auto habit = better_habit(plan)) {
    std::vector<AiringSpan> better = airing_of(plan, *habit);
    std::erase_if(better, [&](const AiringSpan& span) { return !needs_more_air(plan, {span}); });
    spans = wider_of(spans, better);
  }
  std::vector<std::vector<AiringSpan>> airings;
  for (const AiringSpan& span : spans) {
    if (airings.empty() || airings.back().back().time.end != span.time.begin)
      airings.emplace_back();
    airings.back().push_back(span);
  }
  return airings;
}

}  // namespace tackfree
