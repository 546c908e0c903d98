#include "tackfree/schedule/attended_work.hpp"

#include <algorithm>

namespace tackfree {
namespace {

class WorkSums {
 public:
  explicit WorkSums(const Zone& zone) : zone_(zone) {}

  void add(KindOfWork kind, const Interval& time) {
    if (time.length() <= Minutes(0)) return;
    sums_.in_all += time.length();
    const auto known = std::ranges::find(sums_.kinds, kind, &WorkOfKind::kind);
    if (known != sums_.kinds.end())
      known->work += time.length();
    else
      sums_.kinds.push_back({kind, time.length()});
    add_to_days(time);
  }

  AttendedWork result() {
    std::ranges::sort(sums_.days, {}, &WorkOfDay::on);
    return std::move(sums_);
  }

 private:
  void add_to_days(const Interval& time) {
    for (Instant from = time.begin; from < time.end;) {
      const Date on = zone_.local(from).on;
      const Instant midnight = zone_.instant({.on = next_day(on), .minute_of_day = 0});
      const Instant to = std::min(time.end, midnight);
      const auto known = std::ranges::find(sums_.days, on, &WorkOfDay::on);
      if (known != sums_.days.end())
        known->work += to - from;
      else
        sums_.days.push_back({on, to - from});
      from = to;
    }
  }

  const Zone& zone_;
  AttendedWork sums_;
};

}  // namespace

AttendedWork attended_work(const OperationList& list, const Schedule& schedule, const Zone& zone) {
  WorkSums sums(zone);
  for (const DatedStep& step : schedule.steps) {
    if (list.operations.at(step.operation).done) continue;
    for (const Interval& piece : step.pieces)
      sums.add(list.operations.at(step.operation).kind, piece);
  }
  for (const Session& session : schedule.sessions) sums.add(SessionWork::set_up, session.set_up);
  for (const Session& session : schedule.sessions)
    sums.add(SessionWork::clean_up, session.clean_up);
  for (const ToolRest& rest : schedule.tool_rests) sums.add(SessionWork::clean_up, rest.cleaning);
  AttendedWork work = sums.result();
  for (const Unplaced& unplaced : schedule.unplaced)
    work.without_time += list.operations.at(unplaced.operation).work;
  return work;
}

}  // namespace tackfree
