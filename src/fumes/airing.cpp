#include "tackfree/fumes/airing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace tackfree {

std::vector<CoatingStretch> coating_stretches(const OperationList& list, const Schedule& schedule) {
  std::vector<CoatingStretch> stretches;
  for (const Session& session : schedule.sessions) {
    if (session.steps.empty()) continue;
    Interval time{session.set_up.begin, session.set_up.begin};
    for (const std::size_t step : session.steps)
      time.end = std::max(time.end, schedule.steps.at(step).end());
    time.begin = std::min(time.begin, schedule.steps.at(session.steps.front()).begin());
    stretches.push_back({time, session.steps});
  }
  for (std::size_t step = 0; step < schedule.steps.size(); ++step) {
    const DatedStep& dated = schedule.steps[step];
    const Operation& op = list.operations.at(dated.operation);
    // What is on for longer than this has given off nearly all it has. Source: assumed.
    constexpr Minutes gone_after = 2 * one_day;
    if (op.skipped() || (op.done && dated.end() + gone_after < schedule.span.begin)) continue;
    if (op.kind == OperationKind::coat && !dated.session)
      stretches.push_back({{dated.begin(), dated.end()}, {step}});
  }
  std::ranges::sort(stretches, {}, &CoatingStretch::time);
  return stretches;
}

std::vector<AiringSpan> airing_spans(const std::vector<CoatingStretch>& stretches,
                                     const AiringHabit& habit) {
  // How many stretches ask for each opening, and where that changes.
  std::map<Instant, std::array<int, 4>> changes;
  const auto ask = [&](Interval time, Opening opening) {
    if (time.length() <= Minutes(0)) return;
    changes[time.begin].at(static_cast<std::size_t>(opening)) += 1;
    changes[time.end].at(static_cast<std::size_t>(opening)) -= 1;
  };
  for (const CoatingStretch& stretch : stretches) {
    ask(stretch.time, habit.while_coating);
    ask({stretch.time.end, stretch.time.end + whole_minutes_up(habit.after_for)}, habit.after);
  }
  std::vector<AiringSpan> spans;
  std::array<int, 4> asked{};
  Opening now = Opening::closed;
  Instant since;
  for (const auto& [at, change] : changes) {
    for (std::size_t i = 0; i < asked.size(); ++i) asked.at(i) += change.at(i);
    Opening next = Opening::closed;
    for (std::size_t i = 0; i < asked.size(); ++i)
      if (asked.at(i) > 0) next = static_cast<Opening>(i);
    if (next == now) continue;
    if (now != Opening::closed) spans.push_back({{since, at}, now});
    now = next;
    since = at;
  }
  return spans;
}

double mixing_factor(const AirChanges& changes, Opening opening) {
  return opening == Opening::open_and_fan ? changes.mixing_through_draft.value
                                          : changes.mixing_one_opening.value;
}

ChangeRate working_changes(const Room& room, const AirChanges& changes, Opening opening) {
  ChangeRate rate = changes.closed.value;
  if (opening == Opening::ajar) rate = changes.ajar.value;
  if (opening == Opening::open || opening == Opening::open_and_fan) rate = changes.open.value;
  bool measured = false;
  if (opening == Opening::open_and_fan && room.fan && room.volume) {
    measured = room.fan->measured;
    const double delivered = measured ? 1.0 : changes.fan_delivers.value.in(fraction);
    const double natural = rate.in(per_hour);
    const double fan = (room.fan->flow * delivered / *room.volume).in(per_hour);
    rate = per_hour(std::sqrt(natural * natural + fan * fan));
  }
  if (!measured) rate = std::min(rate, changes.most_credited.value);
  return rate / mixing_factor(changes, opening);
}

std::vector<AirStretch> air_stretches(const std::vector<AiringSpan>& spans, Instant start,
                                      const Room& room, const AirChanges& changes) {
  const ChangeRate closed = working_changes(room, changes, Opening::closed);
  std::vector<AirStretch> stretches{{Duration{}, closed}};
  for (const AiringSpan& span : spans) {
    const Duration begin = to_duration(span.time.begin - start);
    if (stretches.back().from >= begin) stretches.pop_back();
    stretches.push_back({begin, working_changes(room, changes, span.opening)});
    stretches.push_back({to_duration(span.time.end - start), closed});
  }
  return stretches;
}

}  // namespace tackfree
