#include "tackfree/schedule/check_coats_a_day.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

std::vector<std::string> broken_coats_a_day(const Job& job, const OperationList& list,
                                            const Schedule& schedule) {
  std::vector<std::string> broken;
  struct Lying {
    Date on;
    bool melts;
  };
  std::map<std::pair<std::size_t, Side>, std::vector<Lying>> sides;
  for (const DatedStep& step : schedule.steps) {
    const Operation& op = list.operations[step.operation];
    if (op.skipped()) continue;
    std::vector<Lying>& coats = sides[{op.batch, op.side}];
    if (op.takes_off && !coats.empty()) coats.pop_back();
    if (!op.coating) continue;
    const auto& most = job.coatings[*op.coating].coats_a_day_max;
    const Date today = job.calendar.zone.local(step.begin()).on;
    coats.push_back({today, most.has_value()});
    const auto of_today = std::ranges::count_if(
        coats, [&](const Lying& coat) { return coat.melts && coat.on == today; });
    if (most && !op.done && of_today > most->value)
      broken.push_back(fmt::format("{} is one coat too many on {}", op.key, iso_date(today)));
  }
  return broken;
}

}  // namespace tackfree
