#include "tackfree/plan/tonight.hpp"

#include "tackfree/air/air_readings.hpp"
#include "tackfree/air/dried_share.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/plan/log_facts.hpp"
#include "tackfree/schedule/done_work.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>
#include <map>
#include <numbers>

namespace tackfree {

namespace {

constexpr Minutes longest_pause{30};
constexpr Minutes looks_ahead = 14 * one_day;

class Foreman {
 public:
  explicit Foreman(const Plan& plan)
      : plan_(plan), job_(plan.job), clocks_(drying_clocks(plan.job, plan.air)) {}

  Tonight result() {
    const AirState here = plan_.air.at(plan_.now);
    tonight_.temperature = here.temperature;
    tonight_.humidity = relative_humidity(here.temperature, here.vapour);
    last_reading();
    next_work();
    air();
    waiting();
    return std::move(tonight_);
  }

 private:
  const Operation& operation(std::size_t step) const {
    return plan_.list.operations.at(plan_.schedule.steps.at(step).operation);
  }

  Interval with_session(std::size_t step) const {
    const DatedStep& dated = plan_.schedule.steps[step];
    // Of work that is split between evenings, the piece that is next.
    const auto piece = std::ranges::find_if(
        dated.pieces, [&](const Interval& each) { return each.end > plan_.now; });
    Interval time = piece == dated.pieces.end() ? dated.pieces.back() : *piece;
    if (!dated.session) return time;
    const Session& session = plan_.schedule.sessions.at(*dated.session);
    return {std::min(time.begin, session.set_up.begin), std::max(time.end, session.clean_up.end)};
  }

  void last_reading() {
    // After ln 2 time constants half of a difference is left.
    const Minutes half = whole_minutes_up(fading_of(job_.air) * std::numbers::ln2);
    for (const AirReading& reading : readings_in_log(job_.history))
      if (reading.at <= plan_.now && plan_.now - reading.at <= half)
        tonight_.read_at = std::max(tonight_.read_at.value_or(reading.at), reading.at);
  }

  void next_work() {
    const auto& steps = plan_.schedule.steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (operation(i).done || steps[i].end() <= plan_.now) continue;
      const Interval time = with_session(i);
      if (!tonight_.work.empty() && time.begin > tonight_.stretch.end + longest_pause) {
        tonight_.then = i;
        return;
      }
      if (tonight_.work.empty()) tonight_.stretch = time;
      tonight_.work.push_back(i);
      tonight_.stretch.begin = std::min(tonight_.stretch.begin, time.begin);
      tonight_.stretch.end = std::max(tonight_.stretch.end, time.end);
    }
  }

  std::vector<Gate> failing(const Operation& op, Instant at) const {
    const Coating& coating = job_.coatings[*op.coating];
    std::vector<Gate> gates = failing_gates(coating.limits, plan_.air, clocks_[*op.coating], at,
                                            whole_minutes_up(op.work), job_.grid);
    // Classes without a hold time know no such rule.
    if (!coating.limits.hold_put_on_min) std::erase(gates, Gate::cold_within_hold);
    return gates;
  }

  void air() {
    const auto& steps = plan_.schedule.steps;
    std::size_t next = 0;
    while (next < steps.size() && (operation(next).done || !operation(next).coating)) ++next;
    if (next == steps.size()) return;
    const Operation& op = operation(next);
    AirNow air{*op.coating, {}, {}, {}};
    for (const Gate gate : failing(op, plan_.now)) air.failing.push_back({gate, std::nullopt});
    const Instant end = std::min(plan_.now + looks_ahead, plan_.air.covers().end - job_.grid);
    for (Instant at = plan_.now; at <= end && !air.changes; at += job_.grid) {
      const auto gates = failing(op, at);
      for (GateAt& each : air.failing)
        if (!each.opens && std::ranges::find(gates, each.gate) == gates.end()) each.opens = at;
      if (gates.empty() == air.failing.empty()) continue;
      air.changes = at;
      if (!gates.empty()) air.closes_by = gates.front();
    }
    tonight_.air = std::move(air);
  }

  /// The stage that work to come waits for; light use where none does.
  Stage awaited(std::size_t coat) const {
    for (const Operation& other : plan_.list.operations)
      for (const Wait& wait : other.waits)
        if (wait.operation == coat && wait.stage && !other.done &&
            other.kind != OperationKind::fit_hardware)
          return *wait.stage;
    return Stage::light_use;
  }

  bool is_awaited(std::size_t coat) const {
    for (const Outcome& outcome : plan_.list.outcomes)
      if (std::ranges::find(outcome.coats, coat) != outcome.coats.end()) return true;
    return std::ranges::any_of(plan_.list.operations, [&](const Operation& other) {
      return !other.done && std::ranges::any_of(other.waits, [&](const Wait& wait) {
        return wait.operation == coat && wait.stage && wait.films == 1;
      });
    });
  }

  void waiting() {
    for (std::size_t i = 0; i < plan_.schedule.steps.size(); ++i) {
      const DatedStep& step = plan_.schedule.steps[i];
      const Operation& op = operation(i);
      if (!op.done || !op.coating || op.skipped()) continue;
      const auto dust_free = step.reaches[index_of(Stage::dust_free)];
      if (!dust_free || *dust_free > plan_.now)
        tonight_.dust_free_at = std::max(tonight_.dust_free_at.value_or(plan_.now),
                                         dust_free.value_or(plan_.schedule.span.end));
      if (!is_awaited(step.operation)) continue;
      WaitingCoat coat{i, awaited(step.operation), 0, {}, op.done->not_dry_before.has_value()};
      coat.ready = step.reaches[index_of(coat.towards)];
      if (coat.ready && *coat.ready <= plan_.now && coat.towards == Stage::light_use) continue;
      coat.share = share_of(step, op, coat);
      tonight_.waiting.push_back(coat);
    }
  }

  /// By the hours that are left, as the clock and the trials have them; of a coat that nothing
  /// makes ready, by its law.
  double share_of(const DatedStep& step, const Operation& op, const WaitingCoat& coat) const {
    const Instant applied = op.done ? op.done->dries_from() : step.dries_from.value_or(step.end());
    const DryingCoat drying{&job_.coatings[*op.coating], coat.towards, op.film_for(coat.towards),
                            applied};
    const auto had = dried_share(drying, plan_.air, job_.room.air_speed, plan_.now);
    if (!had) return 0;
    if (!coat.ready) return std::min(*had, 0.99);
    if (*coat.ready <= plan_.now) return 1;
    const auto needs = dried_share(drying, plan_.air, job_.room.air_speed, *coat.ready);
    return needs && *needs > 0 ? std::min(1.0, *had / *needs) : 0;
  }

  const Plan& plan_;
  const Job& job_;
  std::vector<DryingClock> clocks_;
  Tonight tonight_;
};

}  // namespace

Tonight tonight(const Plan& plan) { return Foreman(plan).result(); }

}  // namespace tackfree
