#include "tackfree/schedule/check_schedule.hpp"

#include "tackfree/air/drying.hpp"
#include "tackfree/air/kept_limits.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/base/elementary.hpp"
#include "tackfree/schedule/check_coats_a_day.hpp"
#include "tackfree/schedule/check_done.hpp"
#include "tackfree/schedule/check_shop_rules.hpp"
#include "tackfree/schedule/check_windows.hpp"

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
      : job_(job), list_(list), air_(air), schedule_(schedule), people_(job, schedule.span) {
    for (const DatedStep& step : schedule.steps) step_of_[step.operation] = &step;
  }

  std::vector<std::string> broken() {
    broken_ = wrong_accounts(list_, schedule_);
    for (const DatedStep& step : schedule_.steps) {
      if (operation(step).grit && !operation(step).skipped()) dust(step);
      if (operation(step).done) continue;
      pieces(step);
      waits(step);
      if (operation(step).kind == OperationKind::coat) {
        air_is_fit(step);
        wiped_off(step);
        const auto handled = step.reaches[index_of(Stage::handle)];
        if (handled && !has_reached(step, Stage::handle, *handled))
          say(step, "is not dry to handle when the plan says so");
      }
    }
    coats_below();
    for (std::string& rule : broken_coats_a_day(job_, list_, schedule_))
      broken_.push_back(std::move(rule));
    for (std::string& rule : broken_windows(job_, list_, schedule_))
      broken_.push_back(std::move(rule));
    sessions();
    for (std::string& rule : broken_shop_rules(job_, list_, schedule_))
      broken_.push_back(std::move(rule));
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

  bool quiet(Instant minute) const {
    const int now = job_.calendar.zone.local(minute).minute_of_day;
    const auto& windows = job_.calendar.no_power_sanding;
    return std::any_of(windows.begin(), windows.end(),
                       [&](const DayWindow& w) { return w.begin <= now && now < w.end; });
  }

  bool all_at_work(Interval stretch) const {
    for (Instant m = stretch.begin; m < stretch.end; m += one)
      if (!people_.anybody(m)) return false;
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
    if (step.pieces.size() > 1 && !op.grit) say(step, "is split");
  }

  /// Hours of drying at the reference rate done between two times. The rate bends so little in five
  /// minutes that a straight line between its ends is right to a few seconds a day.
  double progress(const DatedStep& step, Instant to) {
    return progress_until(step, to) - progress_until(step, dries_from(step));
  }

  /// The same from where the air is known: what dries by the same coating's law shares the sums.
  double progress_until(const DatedStep& step, Instant to) {
    constexpr Minutes stride{5};
    const double stride_hours = to_duration(stride).in(hours);
    std::vector<DryingSum>& sums = progress_[*operation(step).coating];
    const Instant begin = air_.covers().begin;
    to = std::max(to, begin);
    const auto before = static_cast<std::size_t>((to - begin) / stride);
    if (sums.empty()) sums.push_back({0, rate(step, begin)});
    while (sums.size() <= before + 1) {
      const double next = rate(step, begin + stride * static_cast<int>(sums.size()));
      sums.push_back({sums.back().done + (sums.back().rate + next) / 2 * stride_hours, next});
    }
    const double part = to_duration((to - begin) % stride) / to_duration(stride);
    return sums[before].done + (sums[before + 1].done - sums[before].done) * part;
  }

  double rate(const DatedStep& step, Instant at) const {
    return drying_rate(coating(step).law, air_.at(at), job_.room.air_speed);
  }

  /// When the coat is on: its end, or the end of wiping it off.
  Instant wet_until(const DatedStep& coat) const {
    const DatedStep* wiping = wiping_of(coat);
    return wiping == nullptr || operation(coat).done ? coat.end() : wiping->end();
  }

  /// A coat that was put on too early counts as on from later.
  Instant dries_from(const DatedStep& coat) const {
    const auto& done = operation(coat).done;
    return done && done->counts_from ? *done->counts_from : wet_until(coat);
  }

  /// Films of the class's own that a coat, and others with it, dry as.
  double films_of(const DatedStep& coat, int films) const {
    const Operation& op = operation(coat);
    return op.film_ratio * films * (op.done ? op.done->films_wet : 1.0);
  }

  const DatedStep* wiping_of(const DatedStep& coat) const {
    const std::size_t next = coat.operation + 1;
    if (next >= list_.operations.size() || list_.operations[next].kind != OperationKind::wipe_off)
      return nullptr;
    const auto found = step_of_.find(next);
    return found == step_of_.end() ? nullptr : found->second;
  }

  /// Has the coat, or a film of so many, reached the stage? One minute is allowed for rounding.
  bool has_reached(const DatedStep& coat, Stage stage, Instant at, int films = 1) {
    if (const auto by_trial = tried(job_, operation(coat), stage, at, films)) return *by_trial;
    const auto& label = coating(coat).label_after[index_of(stage)];
    if (label && !coating(coat).label_points[index_of(stage)].empty())
      return has_dried_by_rows(coat, stage, films, at);
    return label && has_dried(coat, {label->value, depth_of(stage), films}, at);
  }

  /// The same for a stage with rows at several temperatures on the label.
  bool has_dried_by_rows(const DatedStep& coat, Stage stage, int films, Instant at) {
    const Coating& c = coating(coat);
    const Instant from = dries_from(coat);
    if (at < from) return false;
    Duration least = c.label_after[index_of(stage)]->value;
    const double needed = c.slowness * least.in(minutes)*power(films_of(coat, films),
                                                               film_exponent(c.law, stage).value);
    for (const LabelPoint& point : c.label_points[index_of(stage)])
      least = std::min(least, point.after);
    if (depth_of(stage) == Depth::recoat && !job_.faster_than_label &&
        to_duration(at - from) + minutes(1e-6) < least)
      return false;
    const StageRate rate_of(c, stage);
    const double factor = air_speed_factor(c.law.air_exponent.value, job_.room.air_speed);
    double done = 0;
    // One minute more is allowed for rounding.
    for (Instant m = from; m <= at && done < needed; m += one)
      done += factor * (rate_of.relative(air_.at(m)) + rate_of.relative(air_.at(m + one))) / 2;
    return done + 1e-6 >= needed;
  }

  /// Drying that takes `label` at the label's conditions, and for recoating no less than that.
  struct Drying {
    Duration label;
    Depth depth;
    int films = 1;
  };
  bool has_dried(const DatedStep& coat, const Drying& drying, Instant at) {
    const Coating& c = coating(coat);
    const Instant from = dries_from(coat);
    if (at < from) return false;
    if (drying.depth == Depth::recoat && !job_.faster_than_label &&
        to_duration(at - from) + minutes(1e-6) < drying.label)
      return false;
    const AirState at_label{c.label_temperature,
                            vapour_pressure(c.label_temperature, c.label_humidity)};
    const double label_rate = drying_rate(c.law, at_label, metres_per_second(0.10));
    const double exponent = c.law.film_exponents[static_cast<std::size_t>(drying.depth)].value;
    const double needed = c.slowness * drying.label.in(hours)*label_rate *
                          power(films_of(coat, drying.films), exponent);
    return progress(coat, at) + rate(coat, at) / 60 + 1e-6 >= needed;
  }

  /// Is the wait over at `ready`?
  bool is_over(const Wait& wait, const DatedStep& before, Instant ready) {
    const Zone& zone = job_.calendar.zone;
    if (operation(before).skipped()) return before.end() <= ready;
    if (wait.next_day) return zone.local(before.end() - one).on < zone.local(ready).on;
    if (wait.dry_for) return has_dried(before, {*wait.dry_for, Depth::recoat}, ready);
    if (wait.stage) return has_reached(before, *wait.stage, ready, wait.films);
    return before.end() <= ready;
  }

  void waits(const DatedStep& step) {
    for (const Wait& wait : operation(step).waits) {
      const auto found = step_of_.find(wait.operation);
      if (found == step_of_.end()) {
        say(step, "is dated without {}", list_.operations[wait.operation].key);
        continue;
      }
      const DatedStep& before = *found->second;
      const bool skipped = operation(before).skipped();  // then there is nothing to settle or dry
      const Instant ready = step.begin() - (skipped ? Minutes(0) : whole_minutes_up(wait.delay));
      if (!is_over(wait, before, ready)) say(step, "does not wait for {}", operation(before).key);
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

  /// What is put on to be wiped off is left as long as its tin says, and comes off within the time;
  /// a slot of the grid is allowed at either end.
  void wiped_off(const DatedStep& coat) {
    const Coating& c = coating(coat);
    if (!c.wipe_off_after || !c.wipe_off_within) return;
    const DatedStep* wiping = wiping_of(coat);
    if (wiping == nullptr) return say(coat, "is never wiped off");
    const Instant least = coat.end() + whole_minutes_up(c.wipe_off_after->value);
    if (wiping->begin() < least || wiping->begin() >= least + job_.grid)
      say(coat, "is not wiped off when its time has come");
    const Method& method = job_.data.methods[*operation(coat).method];
    const Duration portion =
        operation(coat).area / method.rate.value / std::max(1, operation(coat).portions);
    if (portion > c.wipe_off_within->value - c.wipe_off_after->value + minutes(1e-6))
      say(coat, "has portions too large to be wiped off in time");
    if (wiping->end() > coat.end() + whole_minutes_up(c.wipe_off_within->value) + job_.grid * 2)
      say(coat, "is wiped off too late");
  }

  /// No coat goes on one that may not be recoated yet; coats that melt together dry as one film
  /// (rule 4). What is washed off lies below no more.
  void coats_below() {
    std::map<std::pair<std::size_t, Side>, std::vector<const DatedStep*>> lying;
    for (const DatedStep& step : schedule_.steps) {
      const Operation& op = operation(step);
      if (op.skipped()) continue;
      auto& below = lying[{op.batch, op.side}];
      if (op.takes_off && !below.empty()) below.pop_back();
      if (!op.coating) continue;
      if (!op.done && !below.empty()) dry_below(step, below);
      below.push_back(&step);
    }
  }

  void dry_below(const DatedStep& coat, std::vector<const DatedStep*> below) {
    const Coating& under = coating(*below.back());
    if (!under.label_after[index_of(Stage::recoat)]) return;
    if (!has_reached(*below.back(), Stage::recoat, coat.begin()))
      say(coat, "goes on before {} may be recoated", operation(*below.back()).key);
    if (!under.coats_a_day_max) return;
    std::erase_if(below, [&](const DatedStep* each) { return !coating(*each).coats_a_day_max; });
    const int most = std::min(under.coats_a_day_max->value, static_cast<int>(below.size()));
    for (int films = 2; films <= most; ++films)
      if (!has_reached(**(below.end() - films), Stage::recoat, coat.begin(), films))
        say(coat, "does not wait for the {} coats below, which dry as one", films);
  }

  static bool may_be_put_on(Temperature temperature, const CoatingLimits& limits) {
    return is_warm_enough(temperature, limits.put_on_min.value) &&
           is_cool_enough(temperature, limits.put_on_max.value);
  }

  void air_is_fit(const DatedStep& step) {
    const CoatingLimits& limits = coating(step).limits;
    for (Instant m = step.begin(); m <= step.end(); m += job_.grid) {
      const AirState air = air_.at(m);
      if (!may_be_put_on(air.temperature, limits))
        return say(step, "is put on at {:.1f} C", air.temperature.in_celsius());
      const Temperature boards = air_.surface_at(m);
      if (!may_be_put_on(boards, limits))
        return say(step, "is put on boards of {:.1f} C", boards.in_celsius());
      if (!is_dry_enough(air, limits.humidity_max.value))
        return say(step, "is put on in air too humid");
    }
    Instant touch = wet_until(step);
    while (touch < schedule_.span.end && !has_reached(step, Stage::touch, touch))
      touch += job_.grid;
    for (Instant m = step.begin(); m <= touch; m += job_.grid) {
      const AirState air = air_.at(m);
      if (m > step.end() && !is_warm_enough(air.temperature, limits.hold_min.value))
        return say(step, "is left at {:.1f} C before it is touch-dry",
                   air.temperature.in_celsius());
      if (!is_clear_of_dew(air, air_.surface_at(m), limits.dew_point_margin.value))
        return say(step, "is too near the dew point at {}", iso_utc(m));
    }
    if (!limits.hold_put_on_min) return;
    const Instant held = step.end() + whole_minutes_up(limits.hold_put_on_min->value);
    for (Instant m = step.begin(); m <= held; m += job_.grid)
      if (!is_warm_enough(air_.at(m).temperature, limits.put_on_min.value))
        return say(step, "falls under its putting-on temperature at {}", iso_utc(m));
  }

  void dust(const DatedStep& sanding) {
    const Minutes settles = whole_minutes_up(job_.data.labour.dust_settles.value);
    for (const DatedStep& coat : schedule_.steps) {
      const Operation& op = operation(coat);
      if (op.kind != OperationKind::coat || op.skipped()) continue;
      if (op.done && operation(sanding).done) continue;
      if (in_other_rooms(job_, operation(sanding).batch, op.batch)) continue;
      for (const Interval& piece : sanding.pieces) {
        if (piece.end + settles <= coat.begin()) continue;
        const bool dry =
            piece.begin >= wet_until(coat) && has_reached(coat, Stage::dust_free, piece.begin);
        if (!dry) say(sanding, "makes dust while {} is wet", op.key);
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
        last = std::max(last, wet_until(step));
      }
      const Minutes clean = whole_minutes_up(job_.coatings[session.coating].clean_up.value);
      if (session.set_up.end != first || session.clean_up.begin != last ||
          session.set_up.length() < whole_minutes_up(job_.data.labour.set_up.value) ||
          session.clean_up.length() < clean)
        broken_.emplace_back("a session has no proper set-up or clean-up");
      if (!people_.same_all_through({session.set_up.begin, session.clean_up.end}))
        broken_.emplace_back("a session is not inside one stretch of working hours");
    }
    for (std::size_t s = 0; s < used.size(); ++s) {
      const Operation& op = operation(schedule_.steps[s]);
      if (used[s] != (op.kind == OperationKind::coat && !op.done ? 1 : 0))
        say(schedule_.steps[s], "is in {} sessions", used[s]);
    }
  }

  const Job& job_;
  const OperationList& list_;
  const AirSeries& air_;
  const Schedule& schedule_;
  WorkingPeople people_;
  std::map<std::size_t, const DatedStep*> step_of_;
  struct DryingSum {
    double done, rate;
  };
  std::map<std::size_t, std::vector<DryingSum>> progress_;  ///< by coating
  std::vector<std::string> broken_;
};

}  // namespace

std::vector<std::string> broken_rules(const Job& job, const OperationList& list,
                                      const AirSeries& air, const Schedule& schedule) {
  return Auditor(job, list, air, schedule).broken();
}

}  // namespace tackfree
