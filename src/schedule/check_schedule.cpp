#include "tackfree/schedule/check_schedule.hpp"

#include "tackfree/air/drying.hpp"
#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr Minutes one{1};

/// Goes through the dated steps minute by minute with nothing but the job, the air and the list.
class Auditor {
 public:
  Auditor(const Job& job, const OperationList& list, const AirSeries& air, const Schedule& schedule)
      : job_(job), list_(list), air_(air), schedule_(schedule) {
    for (const DatedStep& step : schedule.steps) step_of_[step.operation] = &step;
  }

  std::vector<std::string> broken() {
    everything_accounted_for();
    for (const DatedStep& step : schedule_.steps) {
      pieces(step);
      waits(step);
      if (operation(step).kind == OperationKind::coat) air_is_fit(step);
      if (operation(step).kind == OperationKind::sand_bare ||
          operation(step).kind == OperationKind::sand_between)
        dust(step);
    }
    sessions();
    one_thing_at_a_time();
    return std::move(broken_);
  }

 private:
  template <class... Values>
  void say(const DatedStep& step, fmt::format_string<Values...> text, Values&&... values) {
    broken_.push_back(operation(step).key + " " +
                      fmt::format(text, std::forward<Values>(values)...));
  }

  const Operation& operation(const DatedStep& step) const {
    return list_.operations[step.operation];
  }
  const Coating& coating(const DatedStep& step) const {
    return job_.coatings[*operation(step).coating];
  }

  void everything_accounted_for() {
    std::vector<int> seen(list_.operations.size(), 0);
    for (const DatedStep& step : schedule_.steps) ++seen[step.operation];
    for (const Unplaced& missing : schedule_.unplaced) ++seen[missing.operation];
    for (std::size_t i = 0; i < seen.size(); ++i)
      if (seen[i] != 1)
        broken_.push_back(
            fmt::format("{} is dated or given up {} times", list_.operations[i].key, seen[i]));
  }

  /// Does anybody work at this minute, by the local calendar?
  bool at_work(Instant minute) const {
    const LocalTime local = job_.calendar.zone.local(minute);
    auto inside = [&](const std::vector<DayWindow>& windows) {
      return std::any_of(windows.begin(), windows.end(), [&](const DayWindow& w) {
        return w.begin <= local.minute_of_day && local.minute_of_day < w.end;
      });
    };
    const auto& off = job_.calendar.days_off;
    const bool day_off = std::find(off.begin(), off.end(), local.on) != off.end();
    if (!day_off && inside(job_.calendar.weekly[static_cast<std::size_t>(weekday_index(local.on))]))
      return true;
    return std::any_of(job_.calendar.added.begin(), job_.calendar.added.end(),
                       [&](const AddedHours& a) { return a.on == local.on && inside(a.windows); });
  }

  bool quiet(Instant minute) const {
    const int now = job_.calendar.zone.local(minute).minute_of_day;
    const auto& windows = job_.calendar.no_power_sanding;
    return std::any_of(windows.begin(), windows.end(),
                       [&](const DayWindow& w) { return w.begin <= now && now < w.end; });
  }

  bool all_at_work(Interval stretch) const {
    for (Instant m = stretch.begin; m < stretch.end; m += one)
      if (!at_work(m)) return false;
    return true;
  }

  void pieces(const DatedStep& step) {
    const Operation& op = operation(step);
    Minutes sum{0};
    for (std::size_t i = 0; i < step.pieces.size(); ++i) {
      const Interval piece = step.pieces[i];
      sum += piece.length();
      if (piece.begin < schedule_.span.begin || piece.end > schedule_.span.end ||
          piece.length() <= Minutes(0))
        say(step, "has a piece outside the plan");
      if (i > 0 && piece.begin < step.pieces[i - 1].end) say(step, "has pieces out of order");
      if (!all_at_work(piece)) say(step, "is done outside working hours");
      if (op.power_sanding)
        for (Instant m = piece.begin; m < piece.end; m += one)
          if (quiet(m)) {
            say(step, "sands by machine in quiet hours at {}", iso_utc(m));
            break;
          }
    }
    const double short_by = op.work.in(minutes) - static_cast<double>(sum.count());
    if (short_by > 1e-6) say(step, "has {:.1f} min too little", short_by);
    if (-short_by >= static_cast<double>(job_.grid.count()) && sum > job_.grid)
      say(step, "has {:.1f} min too much", -short_by);
    const bool may_split =
        op.kind == OperationKind::sand_bare || op.kind == OperationKind::sand_between;
    if (step.pieces.size() > 1 && !may_split) say(step, "is split");
  }

  /// What one stage of one coat has done since the coat was put on, in steps of one minute.
  struct Progress {
    StageRate rate;
    double air_factor;
    double last;                     ///< the rate at the last of `hours`
    std::vector<double> hours{0.0};  ///< label hours done, one for each minute
  };

  Progress& progress(const DatedStep& coat, Stage stage) {
    const Coating& c = coating(coat);
    const auto found = progress_.find({coat.operation, stage});
    if (found != progress_.end()) return found->second;
    const StageRate stage_rate(c, stage);
    const double factor = air_speed_factor(c.law.air_exponent.value, job_.room.air_speed);
    const double first = stage_rate.relative(air_.at(coat.end())) * factor;
    return progress_.emplace(std::pair(coat.operation, stage), Progress{stage_rate, factor, first})
        .first->second;
  }

  /// Label hours that the coat has done at `at`, which is not before its end.
  double hours_done(const DatedStep& coat, Stage stage, Instant at) {
    Progress& done = progress(coat, stage);
    const auto wanted = static_cast<std::size_t>((at - coat.end()) / one);
    while (done.hours.size() <= wanted) {
      const Instant next_at = coat.end() + one * static_cast<int>(done.hours.size());
      const double next = done.rate.relative(air_.at(next_at)) * done.air_factor;
      done.hours.push_back(done.hours.back() + (done.last + next) / 2 / 60);
      done.last = next;
    }
    return done.hours[wanted];
  }

  /// The shortest time the label names for the stage: its rows count too.
  static Duration label_floor(const Coating& c, Stage stage) {
    Duration floor = c.label_after[index_of(stage)]->value;
    for (const LabelPoint& point : c.label_points[index_of(stage)])
      floor = std::min(floor, point.after);
    return floor;
  }

  /// Has the coat reached the stage at `at`? One minute is allowed for rounding.
  bool has_reached(const DatedStep& coat, Stage stage, Instant at) {
    const Coating& c = coating(coat);
    const auto& label = c.label_after[index_of(stage)];
    if (!label || at < coat.end()) return false;
    const bool floor = stage == Stage::handle || stage == Stage::recoat || stage == Stage::sand;
    if (floor && !job_.faster_than_label &&
        to_duration(at - coat.end()) + minutes(1e-6) < label_floor(c, stage))
      return false;
    const double exponent = c.law.film_exponents[static_cast<std::size_t>(depth_of(stage))].value;
    const double needed = label->value.in(hours)*std::pow(operation(coat).film_ratio, exponent);
    const double done = hours_done(coat, stage, at);
    Progress& all = progress(coat, stage);
    const double now = all.rate.relative(air_.at(at)) * all.air_factor;
    return done + now / 60 + 1e-6 >= needed;
  }

  void waits(const DatedStep& step) {
    for (const Wait& wait : operation(step).waits) {
      const auto found = step_of_.find(wait.operation);
      if (found == step_of_.end()) {
        say(step, "is dated without {}", list_.operations[wait.operation].key);
        continue;
      }
      const DatedStep& before = *found->second;
      const Instant ready = step.begin() - whole_minutes_up(wait.delay);
      if (wait.stage ? !has_reached(before, *wait.stage, ready) : before.end() > ready)
        say(step, "does not wait for {}", operation(before).key);
    }
  }

  /// When the dusting off right before a coat began; the coat's own begin where there is none. Dust
  /// goes on settling, so parts that were wiped at another time do not count as wiped.
  Instant dusted_from(const DatedStep& coat) {
    for (const Wait& wait : operation(coat).waits) {
      if (list_.operations[wait.operation].kind != OperationKind::dust_off) continue;
      const auto found = step_of_.find(wait.operation);
      if (found == step_of_.end()) continue;
      if (found->second->end() != coat.begin()) say(coat, "is not put on right after dusting off");
      return std::min(coat.begin(), found->second->begin());
    }
    return coat.begin();
  }

  void air_is_fit(const DatedStep& step) {
    const CoatingLimits& limits = coating(step).limits;
    for (Instant m = step.begin(); m <= step.end(); m += job_.grid) {
      const AirState air = air_.at(m);
      if (air.temperature < limits.put_on_min.value || air.temperature > limits.put_on_max.value)
        return say(step, "is put on at {:.1f} C", air.temperature.in_celsius());
      const Temperature boards = air_.surface_at(m);
      if (boards < limits.put_on_min.value || boards > limits.put_on_max.value)
        return say(step, "is put on boards of {:.1f} C", boards.in_celsius());
      if (relative_humidity(air.temperature, air.vapour) > limits.humidity_max.value)
        return say(step, "is put on in air too humid");
    }
    Instant touch = step.end();
    while (touch < schedule_.span.end && !has_reached(step, Stage::touch, touch)) touch += one;
    for (Instant m = step.begin(); m <= touch; m += job_.grid) {
      const AirState air = air_.at(m);
      if (m > step.end() && air.temperature < limits.hold_min.value)
        return say(step, "is left at {:.1f} C before it is touch-dry",
                   air.temperature.in_celsius());
      if (air_.surface_at(m) - dew_point(air.vapour) < limits.dew_point_margin.value)
        return say(step, "is too near the dew point at {}", iso_utc(m));
    }
    if (!limits.hold_put_on_min) return;
    const Instant held = step.end() + whole_minutes_up(limits.hold_put_on_min->value);
    for (Instant m = step.begin(); m <= held; m += job_.grid)
      if (air_.at(m).temperature < limits.put_on_min.value)
        return say(step, "falls under its putting-on temperature at {}", iso_utc(m));
  }

  void dust(const DatedStep& sanding) {
    const Minutes settles = whole_minutes_up(job_.data.labour.dust_settles.value);
    for (const DatedStep& coat : schedule_.steps) {
      if (operation(coat).kind != OperationKind::coat) continue;
      for (const Interval& piece : sanding.pieces) {
        if (piece.end + settles <= coat.begin()) continue;
        const bool dry =
            piece.begin >= coat.end() && has_reached(coat, Stage::dust_free, piece.begin);
        if (!dry) say(sanding, "makes dust while {} is wet", operation(coat).key);
      }
    }
  }

  void sessions() {
    std::vector<int> used(schedule_.steps.size(), 0);
    for (const Session& session : schedule_.sessions) {
      Instant first = schedule_.span.end, last = schedule_.span.begin;
      for (const std::size_t s : session.steps) {
        const DatedStep& step = schedule_.steps[s];
        ++used[s];
        if (operation(step).coating != session.coating || operation(step).method != session.method)
          say(step, "stands in the session of another product");
        first = std::min(first, dusted_from(step));
        last = std::max(last, step.end());
      }
      const Minutes clean = whole_minutes_up(job_.coatings[session.coating].clean_up.value);
      if (session.set_up.end != first || session.clean_up.begin != last ||
          session.set_up.length() < whole_minutes_up(job_.data.labour.set_up.value) ||
          session.clean_up.length() < clean)
        broken_.push_back("a session has no proper set-up or clean-up");
      if (!all_at_work({session.set_up.begin, session.clean_up.end}))
        broken_.push_back("a session is not inside one stretch of working hours");
    }
    for (std::size_t s = 0; s < used.size(); ++s)
      if (used[s] != (operation(schedule_.steps[s]).kind == OperationKind::coat ? 1 : 0))
        say(schedule_.steps[s], "is in {} sessions", used[s]);
  }

  void one_thing_at_a_time() {
    std::vector<Interval> busy;
    for (const DatedStep& step : schedule_.steps)
      busy.insert(busy.end(), step.pieces.begin(), step.pieces.end());
    for (const Session& session : schedule_.sessions) {
      busy.push_back(session.set_up);
      busy.push_back(session.clean_up);
    }
    std::sort(busy.begin(), busy.end());
    for (std::size_t i = 1; i < busy.size(); ++i)
      if (busy[i].begin < busy[i - 1].end)
        broken_.push_back(fmt::format("two things are done at {}", iso_utc(busy[i].begin)));
  }

  const Job& job_;
  const OperationList& list_;
  const AirSeries& air_;
  const Schedule& schedule_;
  std::map<std::size_t, const DatedStep*> step_of_;
  std::map<std::pair<std::size_t, Stage>, Progress> progress_;
  std::vector<std::string> broken_;
};

}  // namespace

std::vector<std::string> broken_rules(const Job& job, const OperationList& list,
                                      const AirSeries& air, const Schedule& schedule) {
  return Auditor(job, list, air, schedule).broken();
}

}  // namespace tackfree
