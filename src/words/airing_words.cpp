#include "tackfree/words/airing_words.hpp"

#include "tackfree/words/vapour_words.hpp"

#include <algorithm>
#include <iterator>
#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

Opening opening_at(const std::vector<AiringSpan>& spans, Instant at) {
  const auto found = std::ranges::find_if(
      spans, [&](const AiringSpan& span) { return span.time.begin <= at && at < span.time.end; });
  return found == spans.end() ? Opening::closed : found->opening;
}

/// Open as far as the wider of both says: a better habit may open wide for less long.
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

}  // namespace

std::string airing_words(const std::vector<AiringSpan>& spans, Instant seen_from,
                         const Figures& figures) {
  const auto until = [&](Instant at) {
    return figures.local_date(at) ==
                   figures.local_date(std::max(seen_from, spans.front().time.begin))
               ? figures.clock(at)
               : figures.moment(at);
  };
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const Interval time = spans[i].time;
    const std::string_view opening = words_for(spans[i].opening);
    const bool goes_on = i > 0 && spans[i - 1].time.end == time.begin;
    if (goes_on || time.begin <= seen_from)
      parts.push_back(
          fmt::format("{}{} until {}", goes_on ? "then " : "", opening, until(time.end)));
    else if (figures.local_date(time.begin) == figures.local_date(time.end))
      parts.push_back(fmt::format("{} {}", opening, figures.clock_span(time)));
    else
      parts.push_back(
          fmt::format("{} {} to {}", opening, figures.clock(time.begin), until(time.end)));
  }
  return fmt::format("{}", fmt::join(parts, ", "));
}

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

namespace {

/// Is the habit too little for a stretch of coating with one of these airings?
bool is_too_little(const Plan& plan, const std::vector<AiringSpan>& own,
                   const std::vector<AiringSpan>& better) {
  const auto meets = [](const Interval& a, const Interval& b) {
    return a.begin < b.end && b.begin < a.end;
  };
  if (!plan.room || plan.room->verdict != HabitVerdict::too_little) return false;
  return std::ranges::any_of(plan.room->stretches, [&](const StretchJudgement& stretch) {
    const auto of_it = [&](const AiringSpan& span) {
      return meets(span.time, stretch.coating) ||
             std::ranges::any_of(stretch.airing,
                                 [&](const AiringSpan& its) { return meets(span.time, its.time); });
    };
    return stretch.too_little &&
           (std::ranges::any_of(own, of_it) || std::ranges::any_of(better, of_it));
  });
}

}  // namespace

std::string airing_advice(const Plan& plan, const std::vector<AiringSpan>& own,
                          const std::vector<AiringSpan>& better, const Figures& figures) {
  std::string by_habit = airing_words(own, plan.now, figures);
  if (!is_too_little(plan, own, better)) return by_habit;
  if (!better_habit(plan))
    return by_habit +
           ". That is too little for these vapours by this estimate, and nothing else that was "
           "tried serves: coat less at a time, or outdoors";
  std::vector<AiringSpan> wider = wider_of(own, better);
  std::erase_if(wider, [&](const AiringSpan& span) { return span.time.end <= plan.now; });
  const std::string by_better = airing_words(wider, plan.now, figures);
  if (by_better == by_habit) return by_habit;
  return fmt::format(
      "{}. {} is too little for these vapours by this estimate", by_better,
      own.empty() ? "Keeping the room closed" : fmt::format("Your own habit ({})", by_habit));
}

}  // namespace tackfree
