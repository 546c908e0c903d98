#include "tackfree/plan/remedies.hpp"

#include "tackfree/logged/log_facts.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/what_if.hpp"
#include "tackfree/schedule/crew.hpp"
#include "tackfree/schedule/make_schedule.hpp"
#include "tackfree/schedule/pose_problem.hpp"
#include "tackfree/schedule/solve.hpp"

#include <algorithm>
#include <functional>
#include <initializer_list>
#include <map>
#include <utility>

namespace tackfree {

namespace {

constexpr int most_celsius = 15, most_two_fahrenheit = 14, most_five_points = 8;
constexpr int most_half_hours = 6;
constexpr Minutes half_hour{30};
/// Heating begins so long before the tin is opened, so that the boards are warm too. Assumed.
constexpr Minutes heats_ahead{120};
/// So many evenings from the one on which the step lies, and before it, are tried alone.
constexpr int most_evenings = 14;
/// What one trial costs for each slot of the plan, in comparisons of two partial schedules:
/// measured, with air, clocks and limits made anew.
constexpr std::int64_t effort_a_slot = 20;
/// What the plan that proves a remedy may search.
constexpr std::int64_t effort_to_prove = most_effort / 64;

/// When the step lies where it has a time, and until when the air must bear it.
struct Placed {
  Interval time;
  std::optional<Instant> bears_until;
};

/// The least number of steps, 1 to `most`, that helps, if more helps no less; 0 where none does.
int least(int most, const std::function<bool(int)>& helps) {
  int fails = 0, steps = 1;
  while (!helps(steps)) {
    fails = steps;
    if (steps == most) return 0;
    steps = std::min(most, 2 * steps);
  }
  while (steps - fails > 1) {
    const int middle = (steps + fails) / 2;
    (helps(middle) ? steps : fails) = middle;
  }
  return steps;
}

ConditionedAir times(ConditionedAir one, int steps, std::optional<Interval> time) {
  one.warmer = one.warmer * steps;
  one.drier = one.drier * steps;
  one.time = time;
  return one;
}

Instant hour_down(Instant at) { return at - at.time_since_epoch() % one_hour; }

class Search {
 public:
  Search(const DatedWork& work, const Job& job, Instant now, solver::Effort& effort)
      : work_(work), job_(job), now_(now), effort_(effort), base_(work.job) {
    for (Batch& batch : base_.batches) batch.rules.ready_by.reset();  // wanted, not needed
  }

  std::vector<Remedy> result() {
    const auto& unplaced = work_.schedule.unplaced;
    const auto root = std::ranges::find_if(
        unplaced, [](const Unplaced& each) { return each.by != HeldBy::previous_step; });
    if (root == unplaced.end()) return {};
    step_ = root->operation;
    const bool fahrenheit = base_.units == UnitSystem::us;
    if (helps(*root, {Gate::too_cold, Gate::too_humid, Gate::dew, Gate::cold_before_dry,
                      Gate::cold_within_hold}) ||
        root->by == HeldBy::drying)
      condition(
          {.warmer = fahrenheit ? fahrenheit_degrees(2) : kelvins(1), .heater = HeaterKind::sealed},
          fahrenheit ? most_two_fahrenheit : most_celsius);
    if (helps(*root, {Gate::too_humid, Gate::dew}))
      condition({.drier = humidity_percent(5)}, most_five_points);
    if (!is_set_by_date(*root)) lengthen();
    return std::move(found_);
  }

 private:
  /// More hours leave the person's own dates as they are.
  static bool is_set_by_date(const Unplaced& root) {
    return root.by == HeldBy::pin || root.by == HeldBy::no_coating_day ||
           root.by == HeldBy::not_before;
  }

  static bool helps(const Unplaced& root, std::initializer_list<Gate> against) {
    return std::ranges::any_of(root.closed, [&](const ClosedDays& closed) {
      return closed.gate && std::ranges::find(against, *closed.gate) != against.end();
    });
  }

  /// Where a rough search puts the step with these changes; nothing where it finds no place.
  std::optional<Placed> placed(const std::vector<Change>& changes) {
    effort_.left -= effort_a_slot * (work_.schedule.span.length() / base_.grid);
    if (effort_.left <= 0) return std::nullopt;
    Job changed = base_;
    for (const Change& each : changes) changed = with_change(std::move(changed), each);
    AirSeries air = work_.air;
    if (std::holds_alternative<ConditionedAir>(changes.front())) {
      Problems known;
      air =
          AirSeries::over(changed.air, work_.air.covers(), known, readings_in_log(changed.history),
                          work_.aired ? work_.aired->openings : std::vector<FasterLoss>())
              .value();
    }
    const auto clocks = drying_clocks(changed, air);
    const PosedProblem posed = pose_problem(changed, work_.list, air, clocks, work_.schedule.span);
    const solver::Solution solution = solved_roughly(posed);
    const solver::SolvedActivity& solved = solution.activities.at(posed.activity_of.at(step_));
    if (!solved.placed()) return std::nullopt;
    Placed result{{posed.grid.at(solved.begin()), posed.grid.at(solved.end())}, {}};
    const Operation& op = work_.list.operations.at(step_);
    if (!op.coating) return result;
    const CoatingLimits& limits = changed.coatings.at(*op.coating).limits;
    result.bears_until = clocks.at(*op.coating).reached(Stage::touch, result.time.end);
    if (result.bears_until && limits.hold_put_on_min)
      result.bears_until = std::max(
          *result.bears_until, result.time.end + whole_minutes_up(limits.hold_put_on_min->value));
    return result;
  }

  /// Keeps a change that the planner agrees gives the step a time; is everything dated by it?
  bool dates_all(const Change& change) {
    solver::Effort own{std::max<std::int64_t>(1, std::min(effort_.left, effort_to_prove))};
    const std::int64_t before = own.left;
    const auto planned = what_if(job_, change, now_, own);
    effort_.left -= before - own.left + effort_a_slot * (work_.schedule.span.length() / base_.grid);
    if (!planned) return false;
    const auto begins = planned->begins.find(work_.list.operations.at(step_).key);
    if (begins == planned->begins.end()) return false;
    found_.push_back({change, step_, begins->second, planned->ready_at});
    return planned->ready_at.has_value();
  }

  /// From before the tin is opened until the coat bears the air as it was.
  std::optional<Interval> around(const Placed& coat) const {
    if (!coat.bears_until) return std::nullopt;
    const Operation& op = work_.list.operations.at(step_);
    const Minutes ahead = heats_ahead + whole_minutes_up(base_.data.labour.set_up.value);
    if (!op.coating) return std::nullopt;
    return Interval{std::max(work_.now, hour_down(coat.time.begin - ahead)),
                    hour_down(*coat.bears_until) + one_hour};
  }

  void condition(const ConditionedAir& one, int most) {
    Placed where;
    const int steps = least(most, [&](int n) {
      const auto there = placed({times(one, n, std::nullopt)});
      if (there) where = *there;
      return there.has_value();
    });
    if (steps == 0) return;
    if (const auto once = around(where))
      for (int n = steps; n <= std::min(most, steps + 2); ++n)
        if (placed({times(one, n, once)})) {
          if (dates_all(times(one, n, once))) return;
          break;
        }
    dates_all(times(one, steps, std::nullopt));
  }

  /// The last end of working hours on each day, where the day has an hour after it.
  std::map<Date, int> ends_of_days() const {
    std::map<Date, int> ends;
    for (const Interval& stretch : anybodys_hours(base_, work_.schedule.span)) {
      const LocalTime last = base_.calendar.zone.local(stretch.end - Minutes(1));
      ends[last.on] = last.minute_of_day + 1;
    }
    std::erase_if(ends, [](const auto& day) { return day.second >= 24 * 60; });
    return ends;
  }

  static AddedHours longer(const std::pair<const Date, int>& day, int half_hours) {
    const int more = half_hours * static_cast<int>(half_hour.count());
    return {day.first, {{day.second, std::min(24 * 60, day.second + more)}}};
  }

  void lengthen() {
    const std::map<Date, int> ends = ends_of_days();
    if (ends.empty()) return;
    Placed where;
    const auto all_longer = [&](int half_hours) {
      std::vector<Change> changes;
      changes.reserve(ends.size());
      for (const auto& day : ends) changes.emplace_back(longer(day, half_hours));
      const auto there = placed(changes);
      if (there) where = *there;
      return there.has_value();
    };
    if (!all_longer(most_half_hours)) return;
    const int half_hours = least(most_half_hours, all_longer);
    if (half_hours == 0) return;
    // One evening should do: that on which the step then lies, or a later one where the work before
    // it was done sooner only because all were longer; else one before it.
    const Date there = base_.calendar.zone.local(where.time.end - Minutes(1)).on;
    const auto first = ends.lower_bound(there);
    auto day = first;
    for (int tried = 0; tried < most_evenings && day != ends.end(); ++tried, ++day)
      if (try_longer(*day, half_hours)) return;
    day = first;
    for (int tried = 0; tried < most_evenings && day != ends.begin(); ++tried)
      if (try_longer(*--day, half_hours)) return;
  }

  bool try_longer(const std::pair<const Date, int>& day, int half_hours) {
    const AddedHours hours = longer(day, half_hours);
    if (!placed({hours})) return false;
    const std::size_t before = found_.size();
    dates_all(hours);
    return found_.size() > before;
  }

  const DatedWork& work_;
  const Job& job_;
  Instant now_;
  solver::Effort& effort_;
  Job base_;
  std::size_t step_ = 0;
  std::vector<Remedy> found_;
};

}  // namespace

std::vector<Remedy> remedies(const DatedWork& work, const Job& job, Instant now,
                             solver::Effort& effort) {
  return Search(work, job, now, effort).result();
}

}  // namespace tackfree
