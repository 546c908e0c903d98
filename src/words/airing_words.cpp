#include "tackfree/words/airing_words.hpp"

#include "tackfree/words/vapour_words.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

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

std::string airing_advice(const Plan& plan, const std::vector<AiringSpan>& own,
                          const std::vector<AiringSpan>& better, const Figures& figures) {
  std::string by_habit = airing_words(own, plan.now, figures);
  if (!needs_more_air(plan, own) && !needs_more_air(plan, better)) return by_habit;
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
