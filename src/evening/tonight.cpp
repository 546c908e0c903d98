#include "tackfree/evening/tonight.hpp"

#include "tackfree/air/air_readings.hpp"
#include "tackfree/air/gates_ahead.hpp"
#include "tackfree/air/kept_limits.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/logged/log_facts.hpp"
#include "tackfree/plan/pot_end.hpp"
#include "tackfree/schedule/make_schedule.hpp"
#include "tackfree/schedule/work_sessions.hpp"

#include <algorithm>
#include <iterator>
#include <numbers>

namespace tackfree {

namespace {

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
    tonight_.waits = batch_waits(plan_, clocks_);
    air();
    uses();
    coat_clocks();
    dust_free();
    airing();
    tonight_.faults = open_faults(job_, plan_.list);
    tonight_.rags = oily_rags(job_, plan_.list, plan_.now);
    return std::move(tonight_);
  }

 private:
  const Operation& operation(std::size_t step) const {
    return plan_.list.operations.at(plan_.schedule.steps.at(step).operation);
  }

  void last_reading() {
    // After ln 2 time constants half of a difference is left.
    const Minutes half = whole_minutes_up(fading_of(job_.air) * std::numbers::ln2);
    for (const AirReading& reading : readings_in_log(job_.history))
      if (reading.at <= plan_.now && plan_.now - reading.at <= half)
        tonight_.read_at = std::max(tonight_.read_at.value_or(reading.at), reading.at);
  }

  bool is_today(Instant at) const {
    const Zone& zone = job_.calendar.zone;
    return zone.local(at).on == zone.local(plan_.now).on;
  }

  void next_work() {
    const auto sessions = work_sessions(plan_.list, plan_.schedule);
    const auto next = std::ranges::find_if(
        sessions, [&](const WorkSession& each) { return each.time.end > plan_.now; });
    if (next == sessions.end()) return;
    tonight_.stretch = next->time;
    for (const WorkTask& task : next->tasks)
      for (const std::size_t step : task.steps) add_work(step);
    std::ranges::sort(tonight_.work);
    tonight_.today = !tonight_.work.empty() && is_today(tonight_.stretch.begin);
    for (auto later = std::next(next); later != sessions.end() && !tonight_.then; ++later)
      for (const WorkTask& task : later->tasks)
        if (!task.is_of_tools() && !tonight_.then) {
          tonight_.then = task.steps.front();
          tonight_.then_at = task.time.begin;
        }
  }

  void add_work(std::size_t step) {
    const bool is_over = plan_.schedule.steps[step].end() <= plan_.now;
    if (!is_over && std::ranges::find(tonight_.work, step) == tonight_.work.end())
      tonight_.work.push_back(step);
  }

  /// When a coat of now would first be too near the dew point, where it is not so at once.
  std::optional<Instant> dew_after_now(const Operation& op,
                                       const std::vector<GateAt>& failing) const {
    if (std::ranges::find(failing, Gate::dew, &GateAt::gate) == failing.end()) return std::nullopt;
    const auto& margin = job_.coatings[*op.coating].limits.dew_point_margin.value;
    for (Instant at = plan_.now; at < plan_.air.covers().end; at += job_.grid)
      if (!is_clear_of_dew(plan_.air.at(at), plan_.air.surface_at(at), margin))
        return at > plan_.now ? std::optional(at) : std::nullopt;
    return std::nullopt;
  }

  /// The coat goes on today, or might by all that it waits for but the air and the hours.
  bool is_due(std::size_t step) const {
    if (tonight_.today && std::ranges::find(tonight_.work, step) != tonight_.work.end())
      return true;
    return std::ranges::none_of(tonight_.waits, [&](const BatchWait& wait) {
      return plan_.list.operations[wait.operation].batch == operation(step).batch &&
             !wait.is_over(plan_.now);
    });
  }

  void air() {
    const auto& steps = plan_.schedule.steps;
    std::size_t next = 0;
    while (next < steps.size() && (operation(next).done || !operation(next).coating)) ++next;
    if (next == steps.size()) return;
    const Operation& op = operation(next);
    if (!is_due(next)) return;
    AirNow air{*op.coating, {}, {}, {}};
    GatesAhead ahead(job_.coatings[*op.coating].limits, plan_.air, clocks_[*op.coating], plan_.now,
                     whole_minutes_up(op.work), job_.grid);
    for (const Gate gate : ahead.failing(0)) air.failing.push_back({gate, std::nullopt});
    air.dew_at = dew_after_now(op, air.failing);
    const Instant end = std::min(plan_.now + looks_ahead, plan_.air.covers().end - job_.grid);
    for (int i = 0; plan_.now + i * job_.grid <= end && !air.changes; ++i) {
      const Instant at = plan_.now + i * job_.grid;
      const auto gates = ahead.failing(i);
      for (GateAt& each : air.failing)
        if (!each.opens && std::ranges::find(gates, each.gate) == gates.end()) each.opens = at;
      if (gates.empty() == air.failing.empty()) continue;
      air.changes = at;
      if (!gates.empty()) air.closes_by = gates.front();
    }
    tonight_.air = std::move(air);
  }

  /// Batches with their last coats on.
  void uses() {
    for (std::size_t batch = 0; batch < job_.batches.size(); ++batch) {
      const auto coats_left = [&](const Operation& op) {
        return op.batch == batch && !op.done && !is_after_coats(op.kind);
      };
      if (std::ranges::any_of(plan_.list.operations, coats_left)) continue;
      BatchUse use{.batch = batch, .light_use = {}, .full_cure = {}};
      bool any = false;
      for (const DatedOutcome& outcome : plan_.schedule.outcomes) {
        if (outcome.batch != batch) continue;
        if (outcome.stage == Stage::light_use) use.light_use = outcome.at;
        if (outcome.stage == Stage::full_cure) use.full_cure = outcome.at;
        any = true;
      }
      if (any) tonight_.uses.push_back(use);
    }
  }

  /// When `work` begins and ends: of this stretch by the plan, else by the log; nothing for other
  /// work.
  std::optional<Interval> time_of(std::size_t work) const {
    const Operation& op = plan_.list.operations[work];
    if (op.done)
      return op.done->logged && !op.skipped() ? std::optional(op.done->time) : std::nullopt;
    if (!tonight_.today) return std::nullopt;
    for (const std::size_t step : tonight_.work)
      if (plan_.schedule.steps[step].operation == work)
        return Interval{plan_.schedule.steps[step].begin(), plan_.schedule.steps[step].end()};
    return std::nullopt;
  }

  void coat_clocks() {
    for (std::size_t i = 0; i < plan_.list.operations.size(); ++i) {
      const Operation& op = plan_.list.operations[i];
      if (op.kind != OperationKind::coat) continue;
      const Coating& coating = job_.coatings[*op.coating];
      if (!coating.wipe_off_after && !coating.pot_life) continue;
      const auto time = time_of(i);
      if (!time) continue;
      CoatClock clock{.operation = i, .wipe_off = {}, .pot_until = {}};
      // The log may be written before it is wiped off.
      if (coating.wipe_off_after &&
          plan_.now < time->end + whole_minutes_up(coating.wipe_off_within->value))
        clock.wipe_off = time->end + whole_minutes_up(coating.wipe_off_after->value);
      if (const auto until = pot_end(plan_, i, time->begin); until && plan_.now < *until)
        clock.pot_until = until;
      if (clock.wipe_off || clock.pot_until) tonight_.clocks.push_back(clock);
    }
  }

  void dust_free() {
    for (const DatedStep& step : plan_.schedule.steps) {
      const Operation& op = plan_.list.operations[step.operation];
      if (!op.done || !op.coating || op.skipped()) continue;
      const Instant at = step.reaches[index_of(Stage::dust_free)].value_or(plan_.schedule.span.end);
      if (at > plan_.now) tonight_.dust_free_at = std::max(tonight_.dust_free_at.value_or(at), at);
    }
  }

  /// Spans that are on, or come with the stretch of work today.
  std::vector<AiringSpan> spans_of(const AiringHabit& habit) const {
    const Instant until =
        tonight_.today ? tonight_.stretch.end + Minutes(1) : plan_.now + Minutes(1);
    std::vector<AiringSpan> spans =
        airing_spans(coating_stretches(plan_.list, plan_.schedule), habit);
    std::erase_if(spans, [&](const AiringSpan& span) {
      return span.time.end <= plan_.now || span.time.begin >= until;
    });
    return spans;
  }

  void airing() {
    AiringNow& airing = tonight_.airing;
    airing.spans = spans_of(job_.room.airing.value_or(AiringHabit()));
    if (plan_.room && plan_.room->proposed) airing.proposed = spans_of(*plan_.room->proposed);
  }

  const Plan& plan_;
  const Job& job_;
  std::vector<DryingClock> clocks_;
  Tonight tonight_;
};

}  // namespace

Tonight tonight(const Plan& plan) { return Foreman(plan).result(); }

}  // namespace tackfree
