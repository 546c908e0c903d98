#include "tackfree/air/drying.hpp"

#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace tackfree {

namespace {

/// One reference minute in the clock's fixed point; 64 bits hold four thousand years of them.
constexpr double units_per_minute = 4294967296.0;
/// Rounding may leave a coat short of a stage by this much without making it wait a minute more.
constexpr std::int64_t rounding_slack = 4295;  // a millionth of a minute
/// No coat needs as much as this.
constexpr double most_units = 4e18;
/// Rates are computed at whole multiples of this, counted from 1970: where a series begins changes
/// nothing.
constexpr Minutes knot_step{5};
constexpr std::size_t mark_step = 64;
constexpr Speed label_air_speed = metres_per_second(0.10);

using RateOf = std::function<double(const AirState&)>;

/// Sums one rate over a series, minute by minute, by the trapezoid rule in fixed point.
class Integrator {
 public:
  Integrator(RateOf rate, const AirSeries& air, double factor)
      : rate_(std::move(rate)), nodes_(air.nodes()), half_step_(0.5 * units_per_minute * factor) {
    sums_.reserve(static_cast<std::size_t>(air.covers().length().count()) + 1);
    sums_.push_back(0);
    at_ = air.covers().begin;
    before_ = rate_(nodes_.front().state);
    while (at_ < air.covers().end) {
      const Instant knot = at_ + knot_step;
      const bool on_knot = at_.time_since_epoch() % knot_step == Minutes(0);
      if (!on_knot || knot > air.covers().end || !straight_to(knot)) minute();
    }
  }

  std::vector<std::int64_t> sums() && { return std::move(sums_); }

 private:
  double rate_at(Instant at) {
    while (nodes_[next_].at < at) ++next_;
    return rate_(state_between(nodes_[next_ - 1], nodes_[next_], at));
  }

  void add(double rate) {
    sums_.push_back(sums_.back() + std::llround(half_step_ * (before_ + rate)));
    before_ = rate;
    at_ += Minutes(1);
  }

  void minute() { add(rate_at(at_ + Minutes(1))); }

  /// Goes on to `knot` on a straight line of rates, unless something bends it.
  bool straight_to(Instant knot) {
    while (nodes_[next_].at <= at_) ++next_;
    if (nodes_[next_].at < knot) return false;
    const double last = rate_(state_between(nodes_[next_ - 1], nodes_[next_], knot));
    if ((before_ > 0.0) != (last > 0.0)) return false;
    const double first = before_;
    const double slope = (last - first) / static_cast<double>(knot_step.count());
    for (int k = 1; k < knot_step.count(); ++k) add(first + slope * k);
    add(last);
    return true;
  }

  RateOf rate_;
  const std::vector<AirSeries::Node>& nodes_;
  double half_step_;
  std::vector<std::int64_t> sums_;
  Instant at_;
  double before_ = 0;
  std::size_t next_ = 1;
};

DryingProgress progress_of(RateOf rate, const AirSeries& air, double factor) {
  ProgressTable table{Integrator(std::move(rate), air, factor).sums(), {}};
  for (std::size_t i = 0; i < table.at_minute.size(); i += mark_step)
    table.at_mark.push_back(table.at_minute[i]);
  return std::make_shared<const ProgressTable>(std::move(table));
}

DryingProgress progress_by_law(const DryingLaw& law, const AirSeries& air, Speed air_speed) {
  return progress_of(
      [&law](const AirState& state) { return drying_rate(law, state, label_air_speed); }, air,
      air_speed_factor(law.air_exponent.value, air_speed));
}

bool dries_alike(const DryingLaw& a, const DryingLaw& b) {
  return a.driver == b.driver && a.activation_energy.value == b.activation_energy.value &&
         a.q10.has_value() == b.q10.has_value() && (!a.q10 || a.q10->value == b.q10->value) &&
         a.slowed_by_humidity == b.slowed_by_humidity &&
         a.air_exponent.value == b.air_exponent.value && a.stops_below.value == b.stops_below.value;
}

/// The rate under the conditions for which the label's hours hold.
double label_rate(const Coating& coating) {
  return drying_rate(coating.law,
                     {coating.label_temperature,
                      vapour_pressure(coating.label_temperature, coating.label_humidity)},
                     label_air_speed);
}

/// The shortest time that the label names for a stage.
Duration shortest_on_label(const Coating& coating, Stage stage) {
  Duration shortest = coating.label_after.at(index_of(stage))->value;
  for (const LabelPoint& point : coating.label_points.at(index_of(stage)))
    shortest = std::min(shortest, point.after);
  return shortest;
}

}  // namespace

bool label_is_floor(Stage stage) {
  return stage == Stage::handle || stage == Stage::recoat || stage == Stage::sand;
}

DryingClock::DryingClock(const Coating& coating, const AirSeries& air, Speed air_speed,
                         bool faster_than_label)
    : DryingClock(coating, air, air_speed, faster_than_label,
                  progress_by_law(coating.law, air, air_speed)) {}

DryingClock::DryingClock(const Coating& coating, const AirSeries& air, Speed air_speed,
                         bool faster_than_label, DryingProgress by_law)
    : covers_(air.covers()), tracks_{std::move(by_law)} {
  if (label_rate(coating) <= 0.0) return;  // the label's hours say nothing about such a film
  // Rounded like the steps of the series, so that label conditions give the label's hours.
  label_step_ = static_cast<double>(std::llround(units_per_minute * label_rate(coating)));
  recoat_exponent_ = film_exponent(coating.law, Stage::recoat).value;
  label_is_least_ = !faster_than_label;
  for (std::size_t i = 0; i < stage_count; ++i)
    if (coating.label_after.at(i))
      add_need(coating, static_cast<Stage>(i), air, air_speed, faster_than_label);
  std::stable_sort(needs_.begin(), needs_.end(),
                   [](const Need& a, const Need& b) { return a.label < b.label; });
  note_plain_needs();
}

void DryingClock::note_plain_needs() {
  PlainNeed so_far;
  for (const Need& need : needs_) {
    const auto amount = amount_of(need, 1.0);
    if (need.track != 0 || !amount) return;
    so_far.amount = std::max(so_far.amount, *amount);
    so_far.at_least = std::max(so_far.at_least, need.at_least);
    plain_.at(index_of(need.stage)) = so_far;
  }
}

void DryingClock::add_need(const Coating& coating, Stage stage, const AirSeries& air,
                           Speed air_speed, bool faster_than_label) {
  const bool has_rows = !coating.label_points.at(index_of(stage)).empty();
  if (has_rows) {
    const StageRate rate(coating, stage);
    tracks_.push_back(progress_of([&rate](const AirState& state) { return rate.relative(state); },
                                  air,
                                  air_speed_factor(coating.law.air_exponent.value, air_speed)));
  }
  const double label_step = has_rows ? units_per_minute : label_step_;
  const Duration label = coating.label_after.at(index_of(stage))->value;
  const bool floor = label_is_floor(stage) && !faster_than_label;
  needs_.push_back(
      {.stage = stage,
       .label = label,
       .track = has_rows ? tracks_.size() - 1 : 0,
       .amount = label_step * label.in(minutes),
       .film_exponent = film_exponent(coating.law, stage).value,
       .at_least = floor ? whole_minutes_up(shortest_on_label(coating, stage)) : Minutes(0)});
}

std::optional<std::int64_t> DryingClock::amount_of(const Need& need, double film_ratio) {
  const double amount =
      film_ratio == 1.0 ? need.amount : need.amount * std::pow(film_ratio, need.film_exponent);
  if (amount > most_units) return std::nullopt;
  return std::llround(amount);
}

std::size_t DryingClock::minute_of(Instant at) const {
  return static_cast<std::size_t>(std::max(Minutes(0), at - covers_.begin).count());
}

std::optional<std::size_t> DryingClock::minute_done(std::size_t track, Instant applied,
                                                    std::int64_t amount) const {
  if (applied > covers_.end) return std::nullopt;
  const ProgressTable& table = *tracks_[track];
  const std::size_t start = minute_of(applied);
  const std::int64_t target = table.at_minute[start] + amount;
  const auto first_mark = table.at_mark.begin() + static_cast<std::ptrdiff_t>(start / mark_step);
  const auto mark = std::lower_bound(first_mark, table.at_mark.end(), target);
  // What is looked for lies after the mark before, and no later than this one.
  const auto marks = static_cast<std::size_t>(mark - table.at_mark.begin());
  const std::size_t from = std::max(start, (marks == 0 ? 0 : marks - 1) * mark_step);
  const std::size_t to = std::min(table.at_minute.size(), marks * mark_step + 1);
  const auto minutes_begin = table.at_minute.begin();
  const auto done =
      std::lower_bound(minutes_begin + static_cast<std::ptrdiff_t>(from),
                       minutes_begin + static_cast<std::ptrdiff_t>(std::max(from, to)), target);
  const auto minute = static_cast<std::size_t>(done - minutes_begin);
  if (minute >= table.at_minute.size() || table.at_minute[minute] < target) return std::nullopt;
  return minute;
}

bool DryingClock::has(Stage stage) const {
  return std::any_of(needs_.begin(), needs_.end(),
                     [&](const Need& need) { return need.stage == stage; });
}

std::optional<Instant> DryingClock::reached(Stage stage, Instant applied, double film_ratio) const {
  const auto& plain = plain_.at(index_of(stage));
  if (plain && film_ratio == 1.0) {
    const auto done =
        minute_done(0, applied, std::max<std::int64_t>(0, plain->amount - rounding_slack));
    if (!done) return std::nullopt;
    const Instant at = std::max(covers_.begin + Minutes(*done), applied + plain->at_least);
    return at > covers_.end ? std::nullopt : std::optional(at);
  }
  if (!has(stage)) return std::nullopt;
  Instant at = std::max(applied, covers_.begin);
  std::int64_t most_by_law = 0;
  for (const Need& need : needs_) {
    const auto amount = amount_of(need, film_ratio);
    if (!amount) return std::nullopt;
    if (need.track == 0) {
      most_by_law = std::max(most_by_law, *amount);
    } else {
      const auto done = minute_done(need.track, applied, *amount - rounding_slack);
      if (!done) return std::nullopt;
      at = std::max(at, covers_.begin + Minutes(*done));
    }
    at = std::max(at, applied + need.at_least);
    if (need.stage == stage) break;
  }
  const auto done =
      minute_done(0, applied, std::max<std::int64_t>(0, most_by_law - rounding_slack));
  if (!done) return std::nullopt;
  at = std::max(at, covers_.begin + Minutes(*done));
  if (at > covers_.end) return std::nullopt;
  return at;
}

std::optional<Instant> DryingClock::dried_for(Duration label, Instant applied,
                                              double film_ratio) const {
  const double amount = label_step_ * label.in(minutes)*std::pow(film_ratio, recoat_exponent_);
  if (label_step_ <= 0.0 || amount > most_units) return std::nullopt;
  const auto done = minute_done(0, applied, std::llround(amount) - rounding_slack);
  if (!done) return std::nullopt;
  const Minutes at_least = label_is_least_ ? whole_minutes_up(label) : Minutes(0);
  const Instant at = std::max(covers_.begin + Minutes(*done), applied + at_least);
  return at > covers_.end ? std::nullopt : std::optional(at);
}

Duration DryingClock::until(std::size_t track, Instant applied, std::int64_t amount,
                            std::size_t done) const {
  const std::vector<std::int64_t>& progress = tracks_[track]->at_minute;
  const std::size_t from = minute_of(applied);
  Duration until_done = to_duration(covers_.begin + Minutes(done) - applied);
  if (done > from) {
    const auto over = static_cast<double>(progress[done] - progress[from] - amount);
    const auto last_step = static_cast<double>(progress[done] - progress[done - 1]);
    until_done -= minutes(over / last_step);
  }
  return until_done;
}

std::optional<Duration> DryingClock::exact_duration(Stage stage, Instant applied,
                                                    double film_ratio) const {
  if (!has(stage)) return std::nullopt;
  Duration longest;
  for (const Need& need : needs_) {
    const auto amount = amount_of(need, film_ratio);
    if (!amount) return std::nullopt;
    const auto done = minute_done(need.track, applied, *amount);
    if (!done) return std::nullopt;
    longest = std::max(longest, until(need.track, applied, *amount, *done));
    if (need.stage == stage) break;
  }
  return longest;
}

std::vector<DryingClock> drying_clocks(const std::vector<Coating>& coatings, const AirSeries& air,
                                       Speed air_speed, bool faster_than_label) {
  std::vector<DryingClock> clocks;
  for (std::size_t i = 0; i < coatings.size(); ++i) {
    DryingProgress by_law;
    for (std::size_t j = 0; j < i && !by_law; ++j)
      if (dries_alike(coatings[j].law, coatings[i].law)) by_law = clocks[j].tracks_.front();
    if (!by_law) by_law = progress_by_law(coatings[i].law, air, air_speed);
    clocks.push_back(
        DryingClock(coatings[i], air, air_speed, faster_than_label, std::move(by_law)));
  }
  return clocks;
}

}  // namespace tackfree
