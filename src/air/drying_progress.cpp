#include "tackfree/air/drying_progress.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

using Points = std::vector<RatePoints::Point>;

Instant step_at_or_before(Instant at, Minutes step) {
  const Minutes over = at.time_since_epoch() % step;
  return at - over - (over < Minutes(0) ? step : Minutes(0));
}

// NOLINTNEXTLINE(bugprone-incorrect-roundings): never negative, and far from 2^52
std::int64_t rounded(double progress) { return static_cast<std::int64_t>(progress + 0.5); }

HumidAir air_between(const RatePoints::Point& a, const RatePoints::Point& b, Instant at) {
  return state_between({a.at, a.air.state()}, {b.at, b.air.state()}, at);
}

}  // namespace

RatePoints rate_points(const AirSeries& air, Minutes step) {
  const std::vector<AirNode>& nodes = air.nodes();
  RatePoints taken{step, {{nodes.front().at, nodes.front().state}}};
  taken.points.reserve(static_cast<std::size_t>(air.covers().length() / step) + nodes.size());
  for (std::size_t i = 1; i < nodes.size(); ++i) {
    const Instant before = nodes[i - 1].at;
    for (Instant at = step_at_or_before(before, step) + step; at < nodes[i].at; at += step)
      taken.points.push_back({at, state_between(nodes[i - 1], nodes[i], at)});
    taken.points.push_back({nodes[i].at, nodes[i].state});
  }
  return taken;
}

DryingProgress::DryingProgress(const Rate& rate, const RatePoints& air, double factor)
    : covers_{air.points.front().at, air.points.back().at},
      step_(air.step),
      steps_an_hour_(static_cast<std::size_t>(Minutes(60) / air.step)),
      first_step_(step_at_or_before(covers_.begin, step_)) {
  sum(rate, air.points, progress_per_minute * factor);
  note_hours();
}

/// The trapezoid rule, over a step at a time where one straight line of air fills it and drying
/// goes on all through it or not at all; else over a minute at a time.
void DryingProgress::sum(const Rate& rate, const Points& points, double per_rate_minute) {
  const auto step_minutes = static_cast<double>(step_.count());
  const auto steps = static_cast<std::size_t>((covers_.end - first_step_) / step_ + 1);
  done_.reserve(steps + 1);
  is_by_minute_.reserve(steps);
  done_.push_back(0);
  double before = rate(points.front().air);
  std::size_t next = 1;  // the first point after `at`
  for (Instant at = first_step_; at < covers_.end; at += step_) {
    if (points[next - 1].at == at && points[next].at == at + step_) {
      const double after = rate(points[next].air);
      if ((before > 0.0) == (after > 0.0)) {
        done_.push_back(done_.back() +
                        rounded(per_rate_minute * step_minutes * (before + after) / 2));
        is_by_minute_.push_back(false);
        before = after;
        ++next;
        continue;
      }
    }
    std::int64_t done = done_.back();
    by_minute_.push_back(is_by_minute_.size());
    is_by_minute_.push_back(true);
    for (Instant minute = at; minute < at + step_; minute += Minutes(1)) {
      minute_done_.push_back(done);
      if (minute < covers_.begin || minute >= covers_.end) continue;
      const Instant end = minute + Minutes(1);
      const double after = rate(air_between(points[next - 1], points[next], end));
      done += rounded(per_rate_minute * (before + after) / 2);
      before = after;
      if (points[next].at == end) ++next;
    }
    done_.push_back(done);
  }
}

void DryingProgress::note_hours() {
  for (std::size_t i = 0; i < done_.size(); i += steps_an_hour_) hour_done_.push_back(done_[i]);
}

DryingProgress::Place DryingProgress::place_of(Instant at) const {
  const std::int64_t since = (at - first_step_).count();
  return {static_cast<std::size_t>(since / step_.count()), since % step_.count()};
}

std::int64_t DryingProgress::done_at(const Place& place) const {
  const auto [step, minute] = place;
  if (minute == 0) return done_[step];
  if (!is_by_minute_[step])
    return done_[step] + (done_[step + 1] - done_[step]) * minute / step_.count();
  const auto by_minute = std::lower_bound(by_minute_.begin(), by_minute_.end(), step);
  return minute_done_[static_cast<std::size_t>((by_minute - by_minute_.begin()) * step_.count() +
                                               minute)];
}

/// The first step from `from` on at whose end as much is done, which the last step's is. Waits are
/// short beside a year, so it looks 1, 3, 7 ... hours ahead before it searches.
std::size_t DryingProgress::first_step_reaching(std::size_t from, std::int64_t done) const {
  std::size_t hour = from / steps_an_hour_;
  std::size_t ahead = 1;
  while (hour + ahead < hour_done_.size() && hour_done_[hour + ahead] < done) {
    hour += ahead;
    ahead *= 2;
  }
  const auto hour_at = [&](std::size_t i) {
    return hour_done_.begin() + static_cast<std::ptrdiff_t>(std::min(i, hour_done_.size()));
  };
  const auto enough = std::lower_bound(hour_at(hour + 1), hour_at(hour + ahead), done);
  std::size_t step =
      std::max(from, static_cast<std::size_t>(enough - hour_done_.begin() - 1) * steps_an_hour_);
  while (done_[step + 1] < done) ++step;
  return step;
}

std::optional<Instant> DryingProgress::first_minute(Instant start, std::int64_t amount) const {
  if (start > covers_.end) return std::nullopt;
  const Instant from = std::max(start, covers_.begin);
  if (amount <= 0) return from;
  if (from == covers_.end) return std::nullopt;
  const Place begins = place_of(from);
  const std::int64_t wanted = done_at(begins) + amount;
  if (wanted > done_.back()) return std::nullopt;
  const std::size_t step = first_step_reaching(begins.step, wanted);
  std::int64_t minute = 1;
  if (is_by_minute_[step]) {
    while (minute < step_.count() && done_at({step, minute}) < wanted) ++minute;
  } else {
    const std::int64_t in_step = done_[step + 1] - done_[step];
    minute = ((wanted - done_[step]) * step_.count() + in_step - 1) / in_step;  // rounded up
  }
  return first_step_ + static_cast<std::int64_t>(step) * step_ + Minutes(minute);
}

}  // namespace tackfree
