#include "tackfree/plan/aired_work.hpp"

#include "tackfree/fumes/airing.hpp"
#include "tackfree/plan/log_facts.hpp"
#include "tackfree/schedule/crew.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>
#include <functional>
#include <utility>

namespace tackfree {

namespace {

constexpr double air_heat_wh_per_m3_k = 1200.0 / 3600;
constexpr int most_rounds = 4;

const Indoors* followed_outdoors(const Job& job) {
  const auto* mix = std::get_if<AirMix>(&job.air);
  return mix != nullptr && mix->indoors ? &*mix->indoors : nullptr;
}

AirFlow flow_in(const Job& job, Opening opening) {
  const AirChanges& changes = job.data.air_changes;
  return working_changes(job.room, changes, opening) * *job.room.volume *
         mixing_factor(changes, opening);
}

std::vector<FasterLoss> losses(const Job& job, const std::vector<AiringSpan>& spans) {
  const Indoors& indoors = *followed_outdoors(job);
  const HeatLoss usual = indoors.heating ? indoors.heating->loss.value : usual_heat_loss;
  const AirFlow closed = flow_in(job, Opening::closed);
  std::vector<FasterLoss> faster;
  for (const AiringSpan& span : spans) {
    const double more = (flow_in(job, span.opening) - closed).in(cubic_metres_per_hour);
    if (more > 0)
      faster.push_back({span.time, 1 + more * air_heat_wh_per_m3_k / usual.in(watts_per_kelvin)});
  }
  return faster;
}

bool airing_counts(const Job& job) {
  return followed_outdoors(job) != nullptr && job.room.volume && job.room.airing;
}

/// Open whenever a coat, put on in the person's hours, could have the room open.
std::vector<FasterLoss> every_chance(const Plan& plan) {
  AiringHabit habit = *plan.job.room.airing;
  habit.while_coating = std::max(habit.while_coating, habit.after);
  std::vector<CoatingStretch> chances = coating_stretches(plan.list, plan.schedule);
  for (const Interval& hours : anybodys_hours(plan.job, plan.schedule.span))
    chances.push_back({hours, {}});
  return losses(plan.job, airing_spans(chances, habit));
}

AirSeries aired(const Plan& plan, const std::vector<FasterLoss>& open) {
  Problems known;  // the same air was read when the plan was begun
  return AirSeries::over(plan.job.air, plan.air.covers(), known, readings_in_log(plan.job.history),
                         open)
      .value();
}

using Dated = std::function<Fewer(Plan&, const std::vector<DryingClock>&)>;

/// Dates one plan that stands on one air after the other.
class Rounds {
 public:
  Rounds(Plan& plan, const Dated& dated) : plan_(plan), standing_(plan), dated_(dated) {}

  Fewer settle() {
    Fewer found = dated_(plan_, drying_clocks(plan_.job, plan_.air));
    if (!airing_counts(plan_.job)) return found;
    std::vector<std::vector<FasterLoss>> tried;
    // Ends after most_rounds: the measure is the rounds that are left.
    for (int left = most_rounds; left > 0 && found == Fewer::found; --left) {
      const auto open = openings(plan_);
      if (is_aired_by(plan_, open)) return found;
      if (std::ranges::find(tried, open) != tried.end()) break;
      tried.push_back(open);
      found = date_on(plan_, open);
    }
    if (found != Fewer::found || is_aired_by(plan_, openings(plan_))) return found;
    return careful();
  }

 private:
  static bool is_aired_by(const Plan& plan, const std::vector<FasterLoss>& open) {
    return plan.aired ? plan.aired->openings == open : open.empty();
  }

  Fewer date_on(Plan& plan, const std::vector<FasterLoss>& open) const {
    Plan next = standing_;
    next.air = aired(standing_, open);
    next.aired.reset();
    if (!open.empty()) next.aired = AiredAir{open, false};
    list_work(next);
    const Fewer found = dated_(next, drying_clocks(next.job, next.air));
    plan = std::move(next);
    return found;
  }

  /// What holds however the room is aired; and if its own airing leaves it where it is, that air.
  Fewer careful() {
    const Fewer found = date_on(plan_, every_chance(plan_));
    if (plan_.aired) plan_.aired->every_chance = true;
    if (found != Fewer::found || !plan_.schedule.unplaced.empty()) return found;
    Plan own = plan_;
    const auto open = openings(plan_);
    if (date_on(own, open) == Fewer::found && openings(own) == open) plan_ = std::move(own);
    return Fewer::found;
  }

  Plan& plan_;
  const Plan standing_;
  const Dated& dated_;
};

}  // namespace

std::vector<FasterLoss> openings(const Plan& plan) {
  if (!airing_counts(plan.job)) return {};
  return losses(plan.job,
                airing_spans(coating_stretches(plan.list, plan.schedule), *plan.job.room.airing));
}

AirSeries air_as_aired(const Plan& plan) {
  if (!airing_counts(plan.job)) return plan.air;
  if (plan.aired && !plan.aired->every_chance) return plan.air;
  return aired(plan, openings(plan));
}

void date_aired_work(Plan& plan, Interval span, solver::Effort* effort) {
  const Dated dated = [&](Plan& each, const std::vector<DryingClock>& clocks) {
    date_work(each, clocks, span, effort);
    return Fewer::found;
  };
  Rounds(plan, dated).settle();
}

Fewer date_aired_work_in_sessions(Plan& plan, Interval span, std::size_t most_sessions,
                                  solver::Effort* effort) {
  const Dated dated = [&](Plan& each, const std::vector<DryingClock>& clocks) {
    return date_work_in_sessions(each, clocks, span, most_sessions, effort);
  };
  return Rounds(plan, dated).settle();
}

}  // namespace tackfree
