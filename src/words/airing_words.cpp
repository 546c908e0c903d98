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

std::vector<AiringSpan> airing_of(const Plan& plan) {
  return airing_spans(coating_stretches(plan.list, plan.schedule),
                      plan.job.room.airing.value_or(AiringHabit()));
}

}  // namespace tackfree
