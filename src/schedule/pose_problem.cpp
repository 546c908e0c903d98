#include "tackfree/schedule/pose_problem.hpp"

#include "tackfree/air/coating_limits.hpp"
#include "tackfree/schedule/crew.hpp"
#include "tackfree/schedule/done_work.hpp"
#include "tackfree/schedule/recoat_limits.hpp"
#include "tackfree/schedule/set_dates.hpp"
#include "tackfree/schedule/tool_rests.hpp"
#include "tackfree/schedule/work_time.hpp"
#include "tackfree/takeoff/lots.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

namespace tackfree {

namespace {

using solver::Activity;
using solver::index;
using solver::never;
using solver::OpenTime;
using solver::Rule;
using solver::Run;
using solver::Slot;

/// Work that is split is not started for less than this.
constexpr Minutes shortest_piece{15};

/// Builds the problem part by part.
class Builder {
 public:
  Builder(const Job& job, const OperationList& list, const AirSeries& air,
          const std::vector<DryingClock>& clocks, Interval span)
      : job_(job), list_(list), air_(air), clocks_(clocks) {
    result_.grid = {span, job.grid};
    problem().horizon = grid().slots();
    problem().dust_settles = grid().slots_up(job.data.labour.dust_settles.value);
    problem().shortest_piece = std::max(Slot{1}, static_cast<Slot>(shortest_piece / job.grid));
  }

  PosedProblem build() {
    windows();
    spaces();
    result_.activity_of.assign(list_.operations.size(), 0);
    for (std::size_t i = 0; i < list_.operations.size();)
      i = list_.operations[i].done ? done_activity(i) : activity(i);
    for (std::size_t i = 0; i < list_.operations.size(); ++i)
      for (const Wait& wait : list_.operations[i].waits) lag(i, wait);
    for (const Outcome& outcome : list_.outcomes)
      if (outcome.stage == Stage::light_use)
        for (const std::size_t coat : outcome.coats) {
          if (list_.operations[coat].done) continue;
          problem().goals.push_back(
              {result_.activity_of[coat],
               table(result_.activity_of[coat], {.operation = coat, .stage = Stage::light_use})});
        }
    due_dates();
    release_all();
    add_recoat_limits(job_, list_, air_, result_);
    return std::move(result_);
  }

 private:
  solver::SchedulingProblem& problem() { return result_.problem; }
  const Grid& grid() const { return result_.grid; }

  /// Stretches on the grid: starts rounded up, ends down, so that nobody works a minute outside.
  std::vector<Run> runs_inside(const std::vector<Interval>& stretches) const {
    std::vector<Run> runs;
    for (const Interval& stretch : stretches) {
      const Run run{grid().slot_up(stretch.begin), grid().slot_down(stretch.end)};
      if (run.begin < run.end) runs.push_back(run);
    }
    return runs;
  }

  void windows() {
    const Interval span = grid().span;
    const std::size_t all = std::max<std::size_t>(1, job_.people.size());
    problem().workers = static_cast<int>(all);
    for (const Presence& presence : presences(job_, span)) {
      const Run run{grid().slot_up(presence.stretch.begin), grid().slot_down(presence.stretch.end)};
      if (run.begin >= run.end) continue;
      problem().windows.push_back(run);
      problem().away.insert(problem().away.end(), all - presence.people.size(), run);
    }
    const int late = job_.calendar.late_after;
    std::vector<DayWindow> nights;
    if (late < 24 * 60) nights.push_back({late, 24 * 60});
    problem().late = runs_inside(daily_hours(job_.calendar, nights, span));
    present_.assign(static_cast<std::size_t>(problem().horizon), rules::calendar);
    for (const Run window : problem().windows)
      std::fill(present_.begin() + window.begin, present_.begin() + window.end, solver::no_rule);
    quiet_ = present_;
    // A slot is quiet if any part of it is, so these are rounded outwards.
    for (const Interval& stretch : daily_hours(job_.calendar, job_.calendar.no_power_sanding, span))
      for (Slot s = std::max(Slot{0}, grid().slot_down(stretch.begin));
           s < std::min(problem().horizon, grid().slot_up(stretch.end)); ++s)
        if (quiet_[index(s)] == solver::no_rule) quiet_[index(s)] = rules::quiet;
  }

  /// A resource for each room whose space is limited.
  void spaces() {
    for (std::size_t batch = 0; batch < job_.batches.size(); ++batch) {
      const auto space = space_in_room(job_, batch);
      const auto room = job_.batches[batch].rules.room;
      if (!space || space_of_room_.contains(*room)) continue;
      space_of_room_[*room] = problem().resources.size();
      problem().resources.push_back(in_hundredths(*space));
    }
    for (const SpaceHeld& held : space_held(job_, list_, clocks_))
      problem().standing.push_back(
          {.resource = space_of_room_.at(*job_.batches[held.batch].rules.room),
           .amount = in_hundredths(held.space),
           .until = slot_from(held.until)});
  }

  /// Batches without a room of their own are in the first one.
  std::size_t room_of(const Operation& operation) const {
    return job_.batches[operation.batch].rules.room.value_or(0);
  }

  /// A coat is wet until it is dust-free, and holds its space until it can be handled.
  void make_wet(std::size_t number, std::size_t coat) {
    const Operation& operation = list_.operations[coat];
    Activity& a = problem().activities[number];
    a.wet_until = table(number, {.operation = coat, .stage = Stage::dust_free});
    if (!space_in_room(job_, operation.batch)) return;
    a.uses.push_back({.resource = space_of_room_.at(a.room),
                      .amount = in_hundredths(space_taken(job_, operation.batch)),
                      .held_until = table(number, {.operation = coat, .stage = Stage::handle})});
  }

  /// Closes the ends of last coats after which a batch is ready too late.
  void due_dates() {
    for (const solver::Goal& goal : problem().goals) {
      Activity& a = problem().activities[goal.activity];
      const Operation& coat = list_.operations[result_.operation_of[goal.activity]];
      const auto due = job_.batches[coat.batch].rules.ready_by;
      if (!due) continue;
      std::vector<Rule> closed = problem().open_times[a.open_time].rules();
      for (Slot s = 0; s + a.duration <= problem().horizon; ++s) {
        if (closed[index(s)] != solver::no_rule) continue;
        const Slot ready = problem().tables[goal.table][index(s + a.duration)];
        if (ready == never || grid().at(ready) > *due) closed[index(s)] = rules::due;
      }
      a.open_time = open_time(std::move(closed));
    }
  }

  /// Closes the slots of a batch's work, or of its coats, that its dates forbid.
  void close_by_dates(const Operation& operation, Slot duration, std::vector<Rule>& closed) {
    const SetDates dates(job_, operation);
    if (!dates.any()) return;
    for (Slot s = 0; s < problem().horizon; ++s)
      if (Rule& rule = closed[index(s)]; rule == solver::no_rule)
        rule = dates.rule({grid().at(s), grid().at(s + duration)});
  }

  Slot work_slots(const Operation& operation) const {
    return std::max(Slot{1}, grid().slots_up(operation.work));
  }

  /// The activity of the operations from `first` on that follow at a fixed distance; returns the
  /// next operation.
  std::size_t activity(std::size_t first) {
    const std::size_t number = problem().activities.size();
    std::size_t chief = first, next = first;
    Slot end = 0;
    do {
      const Operation& each = list_.operations[next];
      const Slot begin = next == first ? 0 : end + grid().slots_up(*each.right_after);
      end = begin + work_slots(each);
      result_.place.push_back({begin, end});
      result_.activity_of[next] = number;
      if (each.kind == OperationKind::coat) chief = next;
      ++next;
    } while (next < list_.operations.size() && list_.operations[next].right_after);
    result_.operation_of.push_back(chief);
    result_.batch_of.push_back(list_.operations[chief].batch);
    const Operation& operation = list_.operations[chief];
    Activity a;
    a.duration = end;
    a.dusty = a.splittable = operation.grit.has_value();
    if (a.dusty) {
      std::vector<Rule> closed = operation.power_sanding ? quiet_ : present_;
      undated_.push_back(0);
      close_by_dates(operation, 1, closed);
      a.open_time = open_time(std::move(closed));
    } else {
      Slot around = 0;
      if (operation.kind == OperationKind::coat) {
        a.product = product(operation);
        a.product_from = result_.place[chief].begin;
        around = problem().products[*a.product].set_up + problem().products[*a.product].clean_up;
      }
      std::vector<Rule> closed =
          starts(operation, {a.duration, result_.place[chief].begin, around});
      undated_.push_back(open_time(closed));
      close_by_dates(operation, a.duration, closed);
      a.open_time = open_time(std::move(closed));
    }
    a.room = room_of(operation);
    problem().activities.push_back(a);
    if (operation.kind == OperationKind::coat) make_wet(number, chief);
    return next;
  }

  /// The number of the open time that is closed by these, which alike work shares.
  std::size_t open_time(std::vector<Rule> closed_by) {
    auto& times = problem().open_times;
    const auto same = std::ranges::find(times, closed_by, &solver::OpenTime::rules);
    if (same != times.end()) return static_cast<std::size_t>(same - times.begin());
    times.emplace_back(std::move(closed_by));
    return times.size() - 1;
  }

  /// How long whole work takes: all of it, what comes before the coat, set-up and clean-up around.
  struct Lengths {
    Slot all, before, around;
  };

  /// Where whole work may start: room for it in one window (and, for a coat, the window as a whole
  /// has room for set-up and clean-up too) and air that is fit for it.
  std::vector<Rule> starts(const Operation& operation, Lengths lengths) {
    std::vector<Rule> closed = present_;
    const GateTable* gates = operation.coating ? &gate_table(*operation.coating) : nullptr;
    for (const Run window : problem().windows)
      for (Slot s = window.begin; s < window.end; ++s) {
        Rule& rule = closed[index(s)];
        if (window.end - window.begin < lengths.all + lengths.around)
          rule = rules::too_short;
        else if (s + lengths.all > window.end)
          rule = rules::calendar;
        else if (gates != nullptr)
          if (const auto gate = gates->forbids(s + lengths.before, lengths.all - lengths.before))
            rule = static_cast<Rule>(rules::first_gate + static_cast<int>(*gate));
      }
    return closed;
  }

  const GateTable& gate_table(std::size_t coating) {
    if (const auto found = gates_.find(coating); found != gates_.end()) return found->second;
    GateTable table(job_.coatings[coating].limits, air_, clocks_[coating], grid().span, job_.grid);
    return gates_.emplace(coating, std::move(table)).first->second;
  }

  std::size_t product(const Operation& operation) {
    const std::pair key{*operation.coating, *operation.method};
    auto& products = result_.products;
    const auto found = std::find(products.begin(), products.end(), key);
    if (found != products.end()) return static_cast<std::size_t>(found - products.begin());
    products.push_back(key);
    const Coating& coating = job_.coatings[key.first];
    const Minutes uncleaned = longest_uncleaned(coating, job_.data.methods[key.second]);
    problem().products.push_back({grid().slots_up(job_.data.labour.set_up.value),
                                  grid().slots_up(coating.clean_up.value),
                                  static_cast<Slot>(uncleaned / job_.grid)});
    return products.size() - 1;
  }

  /// The first slot from then on; the horizon where that is not within the plan.
  Slot slot_from(const std::optional<Instant>& at) const {
    const Slot horizon = result_.problem.horizon;
    return at ? std::clamp(grid().slot_up(*at), Slot{0}, horizon) : horizon;
  }

  /// Done work is no activity.
  std::size_t done_activity(std::size_t operation) {
    result_.activity_of[operation] = done_already;
    result_.place.push_back({0, 0});
    return operation + 1;
  }

  /// What done work asks of an activity: no start before that slot, and why.
  void release(std::size_t activity, const std::optional<Instant>& at, const Release& why) {
    const Slot slot = slot_from(at);
    if (slot <= 0) return;
    const std::size_t number = std::min(result_.releases.size(), rules::most_releases - 1);
    if (number == result_.releases.size()) result_.releases.push_back(why);
    released_[activity].push_back({slot, static_cast<Rule>(rules::first_release + number)});
  }

  /// Dust of done sanding settles before anything wet, and is not made on coats that are still wet.
  void keep_dust_from(std::size_t activity) {
    const Operation& work = list_.operations[result_.operation_of[activity]];
    for (const DustKept& kept : kept_by_dust(job_, list_, clocks_, work)) {
      Wait wait{.operation = kept.operation};
      if (work.grit) wait.stage = Stage::dust_free;
      release(activity, kept.until, {wait, HeldBy::dust});
    }
  }

  /// Closes the slots before the latest release of each activity, once the tables are made: these
  /// hold for every activity alike.
  void release_all() {
    for (std::size_t a = 0; a < problem().activities.size(); ++a) {
      keep_dust_from(a);
      auto found = released_.find(a);
      if (found == released_.end()) continue;
      std::vector<std::pair<Slot, Rule>>& releases = found->second;
      std::stable_sort(releases.begin(), releases.end(),
                       [](const auto& x, const auto& y) { return x.first > y.first; });
      std::vector<Rule> closed = problem().open_times[problem().activities[a].open_time].rules();
      std::fill(closed.begin(), closed.begin() + releases.front().first, releases.front().second);
      problem().activities[a].open_time = open_time(std::move(closed));
    }
  }

  void lag(std::size_t to, const Wait& wait) {
    if (list_.operations[to].done) return;
    if (list_.operations[wait.operation].done) {
      HeldBy by = wait.stage || wait.dry_for ? HeldBy::drying : HeldBy::previous_step;
      if (wait.next_day) by = HeldBy::coats_a_day;
      return release(result_.activity_of[to], done_wait_over(job_, list_, clocks_, wait),
                     {wait, by});
    }
    solver::Lag lag{.from = result_.activity_of[wait.operation],
                    .to = result_.activity_of[to],
                    .delay = grid().slots_up(wait.delay)};
    if (lag.from == lag.to) return;
    if (wait.stage || wait.dry_for || wait.next_day) lag.table = table(lag.from, wait);
    problem().lags.push_back(lag);
    result_.wait_of.push_back(wait);
  }

  static double film_of(const Operation& coat, const Wait& wait) {
    return wait.stage ? coat.film_for(*wait.stage) * wait.films : coat.film_ratio;
  }

  /// The table of a wait for a coat. Only ends at which the coat can end are looked up, whatever
  /// the dates set for its batch: other batches share the table. Between them the table takes the
  /// next one's value, so that it does not decrease.
  std::size_t table(std::size_t coat, Wait wait) {
    const std::size_t chief = result_.operation_of[coat];
    wait.operation = chief;
    const Operation& operation = list_.operations[chief];
    const Activity& a = problem().activities[coat];
    const auto key = std::tuple(*operation.coating, wait.stage, wait.dry_for, wait.next_day,
                                film_of(operation, wait), a.duration, result_.place[chief].begin);
    if (const auto found = tables_.find(key); found != tables_.end()) return found->second;
    const OpenTime& time = problem().open_times[undated_[coat]];
    solver::LagTable ready(index(problem().horizon) + 1, never);
    Slot filled = never;
    for (Slot e = problem().horizon; e >= 0; --e) {
      if (e >= a.duration && time.is_open(e - a.duration)) {
        const auto at = wait_over(job_, list_, clocks_, wait, grid().at(e));
        filled = at ? grid().slot_up(*at) : never;
        if (filled > problem().horizon) filled = never;
      }
      ready[index(e)] = filled;
    }
    problem().tables.push_back(std::move(ready));
    return tables_[key] = problem().tables.size() - 1;
  }

  const Job& job_;
  const OperationList& list_;
  const AirSeries& air_;
  const std::vector<DryingClock>& clocks_;
  PosedProblem result_;
  std::vector<Rule> present_, quiet_;
  std::map<std::size_t, GateTable> gates_;
  std::map<std::size_t, std::size_t> space_of_room_;
  std::vector<std::size_t> undated_;  ///< by activity: its starts without dates, coats only
  std::map<std::size_t, std::vector<std::pair<Slot, Rule>>> released_;  ///< by activity
  std::map<std::tuple<std::size_t, std::optional<Stage>, std::optional<Duration>, bool, double,
                      Slot, Slot>,
           std::size_t>
      tables_;
};

}  // namespace

PosedProblem pose_problem(const Job& job, const OperationList& list, const AirSeries& air,
                          const std::vector<DryingClock>& clocks, Interval span) {
  return Builder(job, list, air, clocks, span).build();
}

}  // namespace tackfree
