#include "tackfree/plan/aired_work.hpp"

#include "tackfree/fumes/airing.hpp"
#include "tackfree/plan/listed_work.hpp"
#include "tackfree/schedule/crew.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>
#include <functional>
#include <utility>

namespace tackfree {

namespace {

/// Source: ISO 13789, heat capacity of air per volume (from memory).
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
std::vector<FasterLoss> every_chance(const DatedWork& work) {
  AiringHabit habit = *work.job.room.airing;
  habit.while_coating = std::max(habit.while_coating, habit.after);
  std::vector<CoatingStretch> chances = coating_stretches(work.list, work.schedule);
  for (const Interval& hours : anybodys_hours(work.job, work.schedule.span))
    chances.push_back({hours, {}});
  return losses(work.job, airing_spans(chances, habit));
}

AirSeries aired(const WorkAtHand& work, const std::vector<FasterLoss>& open) {
  Problems known;  // the same air was read when the work was listed
  return AirSeries::over(work.job.air, work.air.covers(), known, readings_in_log(work.job.history),
                         open)
      .value();
}

using Dated = std::function<InSessions(WorkAtHand, const std::vector<DryingClock>&)>;

bool is_aired_by(const DatedWork& work, const std::vector<FasterLoss>& open) {
  return work.aired ? work.aired->openings == open : open.empty();
}

/// Dates the work on one air after the other.
class Rounds {
 public:
  Rounds(const WorkAtHand& at_hand, const Dated& dated) : at_hand_(at_hand), dated_(dated) {}

  InSessions settle() {
    InSessions found = dated_(at_hand_, drying_clocks(at_hand_.job, at_hand_.air));
    if (!airing_counts(at_hand_.job)) return found;
    std::vector<std::vector<FasterLoss>> tried;
    // Ends after most_rounds: the measure is the rounds that are left.
    for (int left = most_rounds; left > 0 && found.work; --left) {
      const auto open = openings(*found.work);
      if (is_aired_by(*found.work, open)) return found;
      if (std::ranges::find(tried, open) != tried.end()) break;
      tried.push_back(open);
      found = date_on(open);
    }
    if (!found.work || is_aired_by(*found.work, openings(*found.work))) return found;
    return careful(*found.work);
  }

 private:
  InSessions date_on(const std::vector<FasterLoss>& open) const {
    WorkAtHand next = at_hand_;
    next.air = aired(at_hand_, open);
    next.aired.reset();
    if (!open.empty()) next.aired = AiredAir{open, false};
    next.list = listed_work(next);
    const std::vector<DryingClock> clocks = drying_clocks(next.job, next.air);
    return dated_(std::move(next), clocks);
  }

  /// What holds however the room is aired; and if its own airing leaves it where it is, that air.
  InSessions careful(const DatedWork& last) const {
    InSessions found = date_on(every_chance(last));
    if (found.work && found.work->aired) found.work->aired->every_chance = true;
    if (!found.work || !found.work->schedule.unplaced.empty()) return found;
    const auto open = openings(*found.work);
    InSessions own = date_on(open);
    return own.work && openings(*own.work) == open ? std::move(own) : std::move(found);
  }

  const WorkAtHand& at_hand_;
  const Dated& dated_;
};

}  // namespace

std::vector<FasterLoss> openings(const DatedWork& work) {
  if (!airing_counts(work.job)) return {};
  return losses(work.job,
                airing_spans(coating_stretches(work.list, work.schedule), *work.job.room.airing));
}

AirSeries air_as_aired(const DatedWork& work) {
  if (!airing_counts(work.job)) return work.air;
  if (work.aired && !work.aired->every_chance) return work.air;
  return aired(work, openings(work));
}

DatedWork date_aired_work(const WorkAtHand& work, Interval span, solver::Effort* effort) {
  const Dated dated = [&](WorkAtHand each, const std::vector<DryingClock>& clocks) {
    return InSessions{date_work(std::move(each), clocks, span, effort), false};
  };
  return std::move(*Rounds(work, dated).settle().work);
}

InSessions date_aired_work_in_sessions(const WorkAtHand& work, Interval span,
                                       std::size_t most_sessions, solver::Effort* effort) {
  const Dated dated = [&](WorkAtHand each, const std::vector<DryingClock>& clocks) {
    return date_work_in_sessions(std::move(each), clocks, span, most_sessions, effort);
  };
  return Rounds(work, dated).settle();
}

}  // namespace tackfree
