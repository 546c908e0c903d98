#include "tackfree/fumes/room_judgement.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>

namespace tackfree {

namespace {

constexpr std::array release_factors{2.0, 1.0, 0.5};
constexpr Duration looked_at_after = days(14);  ///< the last coat

std::optional<std::size_t> emission_of(const Operation& operation, const JobVolumes& volumes) {
  const auto found = std::ranges::find_if(volumes.coats, [&](const CoatNeed& need) {
    return need.batch == operation.batch && need.step == operation.step &&
           need.coat == operation.coat && need.side == operation.side;
  });
  if (found == volumes.coats.end()) return std::nullopt;
  return static_cast<std::size_t>(found - volumes.coats.begin());
}

Instant moment(const VapourPlan& plan, Duration since) {
  return plan.start + whole_minutes_up(since);
}

/// When the tools of one stretch of coating are cleaned.
struct Washing {
  std::size_t coating;
  Interval time;
};

/// Of a planned session its clean-up and those in its pauses; in the log, once a day for each
/// coating, after its last coat.
std::vector<Washing> washings(const Job& job, const OperationList& list, const Schedule& schedule,
                              const CoatingStretch& stretch) {
  const DatedStep& last = schedule.steps.at(stretch.steps.back());
  if (last.session) {
    const Session& session = schedule.sessions.at(*last.session);
    std::vector<Washing> all;
    for (const ToolRest& rest : schedule.tool_rests)
      if (!rest.wrapped && std::ranges::count(stretch.steps, rest.dated_step) > 0)
        all.push_back({session.coating, rest.cleaning});
    all.push_back({session.coating, session.clean_up});
    return all;
  }
  const Operation& op = list.operations.at(last.operation);
  const auto day_of = [&](Instant at) { return job.calendar.zone.local(at).on; };
  const bool goes_on = std::ranges::any_of(schedule.steps, [&](const DatedStep& other) {
    const Operation& later = list.operations.at(other.operation);
    return later.coating == op.coating && !later.skipped() && other.begin() >= last.end() &&
           day_of(other.begin()) == day_of(last.end());
  });
  if (!op.coating || goes_on) return {};
  return {
      {*op.coating,
       {last.end(), last.end() + whole_minutes_up(job.coatings.at(*op.coating).clean_up.value)}}};
}

void note_uncounted(const Coating& coating, std::vector<Uncounted>& found) {
  for (const Uncounted each : {Uncounted::formaldehyde, Uncounted::isocyanates})
    if (std::ranges::count(coating.words.cautions, key_of(each)) > 0 &&
        std::ranges::find(found, each) == found.end())
      found.push_back(each);
}

/// One plan in one room under the three release rates.
class Judge {
 public:
  Judge(const Job& job, const VapourPlan& plan)
      : job_(job), plan_(plan), measures_(measures(job.data.solvents, plan.solvents)) {}

  RoomJudgement result() const {
    RoomJudgement judgement;
    judgement.habit = job_.room.airing.value_or(AiringHabit{});
    judgement.habit_given = job_.room.airing.has_value();
    judgement.solvents = plan_.solvents;
    judgement.uncounted = plan_.uncounted;
    judgement.flow_mixing =
        mixing_factor(job_.data.air_changes, job_.room.fan ? Opening::open_and_fan : Opening::open);
    const std::vector<RoomAir> airs = rooms(judgement.habit);
    judge_limits(judge_stretches(airs, judgement), judgement);
    propose(judgement);
    return judgement;
  }

 private:
  std::vector<RoomAir> rooms(const AiringHabit& habit) const {
    std::vector<RoomAir> airs;
    airs.reserve(release_factors.size());
    for (const double factor : release_factors)
      airs.push_back(room_air(job_.room, job_.data.air_changes, plan_, habit, factor));
    return airs;
  }

  static Highest worst(const std::vector<RoomAir>& airs, const Measure& measure, Duration from,
                       Duration to) {
    Highest worst;
    for (const RoomAir& air : airs) worst = highest(air, measure, from, to, worst);
    return worst;
  }

  /// The least flow under every release rate: found for one, raised where another needs more.
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): two bare factors by their nature
  std::optional<AirFlow> least_flow(const Measure& measure, double most, double mixing) const {
    const Volume room = *job_.room.volume;
    std::optional<ChangeRate> least;
    for (const double factor : release_factors) {
      std::vector<VapourSource> sources = plan_.sources;
      for (VapourSource& source : sources) source.release = source.release * factor;
      if (least &&
          stays_within(RoomAir(room, sources, {{Duration{}, *least}}, plan_.end), measure, most))
        continue;
      least = least_changes(room, sources, plan_.end, measure, most);
      if (!least) return std::nullopt;
    }
    return *least * room * mixing;
  }

  /// The highest of each measure over the whole plan.
  struct Peaks {
    Highest explosive, fifteen_minutes, eight_hours;
  };

  void judge_limits(const Peaks& peaks, RoomJudgement& judgement) const {
    const auto judge = [&](VapourLimit limit, const Highest& peak, const Measure& measure,
                           double most) {
      judgement.limits.at(static_cast<std::size_t>(limit)) = {
          peak.value / most, moment(plan_, peak.at),
          least_flow(measure, most, judgement.flow_mixing)};
    };
    judge(VapourLimit::quarter_explosive, peaks.explosive, measures_.explosive, quarter);
    judge(VapourLimit::tenth_explosive, peaks.explosive, measures_.explosive, tenth);
    judge(VapourLimit::fifteen_minutes, peaks.fifteen_minutes, measures_.fifteen_minutes, 1);
    judge(VapourLimit::eight_hours, peaks.eight_hours, measures_.eight_hours, 1);
  }

  /// Hours since the start at which the next stretch of coating begins, or the end.
  Duration next_begin(std::size_t stretch) const {
    if (stretch + 1 == plan_.stretches.size()) return plan_.end;
    return to_duration(plan_.stretches[stretch + 1].time.begin - plan_.start);
  }

  std::optional<Instant> last_over(const std::vector<RoomAir>& airs, double most,
                                   std::size_t stretch) const {
    const Duration from = to_duration(plan_.stretches[stretch].time.end - plan_.start);
    const Duration to = std::max(from, next_begin(stretch));
    Duration last = from;
    for (const RoomAir& air : airs)
      last = std::max(last, last_above(air, measures_.moment, most, from, to).value_or(from));
    if (last >= to) return std::nullopt;
    return moment(plan_, last);
  }

  /// Each stretch up to the next one; before the first the air is clean.
  Peaks judge_stretches(const std::vector<RoomAir>& airs, RoomJudgement& judgement) const {
    Peaks peaks;
    const auto peak = [&](const Measure& measure, Duration from, Duration to, Highest& over_all) {
      const Highest found = worst(airs, measure, from, to);
      if (found.value > over_all.value) over_all = found;
      return found.value;
    };
    const std::vector<AiringSpan> spans = airing_spans(plan_.stretches, judgement.habit);
    std::size_t next_span = 0;
    for (std::size_t i = 0; i < plan_.stretches.size(); ++i) {
      StretchJudgement stretch;
      stretch.steps = plan_.stretches[i].steps;
      stretch.coating = plan_.stretches[i].time;
      stretch.solvent = plan_.released[i];
      const Duration from = to_duration(stretch.coating.begin - plan_.start);
      const Duration to = std::max(from, next_begin(i));
      if (next_span > 0 && spans[next_span - 1].time.end > stretch.coating.begin)
        stretch.airing_goes_on = spans[next_span - 1];
      while (next_span < spans.size() && spans[next_span].time.begin < moment(plan_, to))
        stretch.airing.push_back(spans[next_span++]);
      stretch.explosive_share = peak(measures_.explosive, from, to, peaks.explosive);
      stretch.fifteen_minutes = peak(measures_.fifteen_minutes, from, to, peaks.fifteen_minutes);
      stretch.eight_hours = peak(measures_.eight_hours, from, to, peaks.eight_hours);
      stretch.under_limit_at = last_over(airs, 1, i);
      stretch.under_tenth_at = last_over(airs, tenth, i);
      const bool aired = !stretch.airing.empty() || stretch.airing_goes_on;
      const bool rises = rises_again(airs, judgement.habit, i);
      stretch.rises_again = aired && rises;
      stretch.too_little = rises || stretch.explosive_share > tenth ||
                           stretch.fifteen_minutes > 1 || stretch.eight_hours > 1;
      stretch.vapour = vapour_course(airs, from, std::min(to, from + days(1)));
      judgement.stretches.push_back(std::move(stretch));
    }
    return peaks;
  }

  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the two ends of one stretch
  std::vector<VapourAt> vapour_course(const std::vector<RoomAir>& airs, Duration from,
                                      Duration to) const {
    constexpr Duration quarter_hour = minutes(15);
    std::vector<VapourAt> course;
    for (Duration at = from; at <= to; at += quarter_hour) {
      double times = 0;
      for (const RoomAir& air : airs) times = std::max(times, value_at(air, measures_.moment, at));
      course.push_back({moment(plan_, at), times});
    }
    return course;
  }

  /// Whether the vapour passes its 8-hour limits after this stretch's airing has ended.
  bool rises_again(const std::vector<RoomAir>& airs, const AiringHabit& habit,
                   std::size_t stretch) const {
    return std::ranges::any_of(
        airs, [&](const RoomAir& air) { return rises_again(air, habit, stretch); });
  }
  bool rises_again(const RoomAir& air, const AiringHabit& habit, std::size_t stretch) const {
    Duration from = to_duration(plan_.stretches[stretch].time.end - plan_.start);
    if (habit.after != Opening::closed) from += habit.after_for;
    const Duration to = next_begin(stretch);
    return from < to && !stays_within(air, measures_.moment, 1, from, to);
  }

  bool enough(const AiringHabit& habit) const {
    return std::ranges::all_of(release_factors, [&](double factor) {
      const RoomAir air = room_air(job_.room, job_.data.air_changes, plan_, habit, factor);
      if (!stays_within(air, measures_.explosive, tenth) ||
          !stays_within(air, measures_.fifteen_minutes, 1) ||
          !stays_within(air, measures_.eight_hours, 1))
        return false;
      for (std::size_t i = 0; i < plan_.stretches.size(); ++i)
        if (rises_again(air, habit, i)) return false;
      return true;
    });
  }

  /// The fewest half hours after each stretch that serve, from an hour to `most`; nothing when that
  /// does not. Source of the hour: assumption of this project, the room needs it whatever the
  /// limits.
  std::optional<AiringHabit> shortest(Opening during, Opening after, int most_half_hours) const {
    const auto habit = [&](int half_hours) {
      return AiringHabit{during, after, hours(0.5 * half_hours)};
    };
    int low = 1, high = most_half_hours;
    if (!enough(habit(high))) return std::nullopt;
    while (high - low > 1) {
      const int middle = (low + high) / 2;
      (enough(habit(middle)) ? high : low) = middle;
    }
    return habit(high);
  }

  /// A habit that serves: the least opening that does so within an evening, else within a day.
  std::optional<AiringHabit> fitting() const {
    using enum Opening;
    std::vector<std::pair<Opening, Opening>> ways{{ajar, ajar}, {open, ajar}, {open, open}};
    if (job_.room.fan) {
      ways.emplace_back(open_and_fan, ajar);
      ways.emplace_back(open_and_fan, open);
      ways.emplace_back(open_and_fan, open_and_fan);
    }
    constexpr int evening = 12, day = 48;
    for (const int most : {evening, day})
      for (const auto& [during, after] : ways)
        if (const auto habit = shortest(during, after, most)) return habit;
    return std::nullopt;
  }

  void propose(RoomJudgement& judgement) const {
    if (enough(judgement.habit)) return;  // less air is never proposed: not all is counted
    judgement.verdict = HabitVerdict::too_little;
    judgement.proposed = fitting();
    if (judgement.proposed)
      judgement.proposed_eight_hours =
          worst(rooms(*judgement.proposed), measures_.eight_hours, Duration{}, plan_.end).value;
  }

  static constexpr double quarter = 0.25;
  static constexpr double tenth = 0.10;

  const Job& job_;
  const VapourPlan& plan_;
  Measures measures_;
};

}  // namespace

VapourPlan vapour_plan(const Job& job, const OperationList& list, const JobVolumes& volumes,
                       const std::vector<CoatEmission>& emissions, const Schedule& schedule) {
  VapourPlan plan;
  plan.stretches = coating_stretches(list, schedule);
  plan.start = schedule.span.begin;
  if (!plan.stretches.empty()) plan.start = std::min(plan.start, plan.stretches.front().time.begin);
  std::map<std::size_t, VapourSource> sources;
  Instant last = plan.start;
  const auto give_off = [&](const SolventMass& part, Interval time, Fraction flashed) {
    VapourSource& source = sources[part.solvent];
    source.release = job.data.solvents.at(part.solvent).release.value;
    source.applications.push_back({to_duration(time.begin - plan.start),
                                   to_duration(time.end - plan.start), part.mass, flashed});
  };
  for (const CoatingStretch& stretch : plan.stretches) {
    Mass released;
    for (const std::size_t index : stretch.steps) {
      const DatedStep& step = schedule.steps.at(index);
      const Operation& operation = list.operations.at(step.operation);
      const auto need = emission_of(operation, volumes);
      if (!need) continue;
      last = std::max(last, step.end());
      const Fraction flashed =
          operation.method ? job.data.methods.at(*operation.method).flashed_off.value : Fraction{};
      for (const CoatEmission& emission : emissions) {
        if (emission.need != *need) continue;
        released += emission.solvent;
        for (const SolventMass& part : emission.parts)
          give_off(part, {step.begin(), step.end()}, flashed);
      }
      note_uncounted(job.coatings.at(*operation.coating), plan.uncounted);
    }
    for (const Washing& wash : washings(job, list, schedule, stretch)) {
      for (const SolventMass& part : cleaning_parts(job, wash.coating)) {
        give_off(part, wash.time, Fraction{});
        released += part.mass;
      }
      last = std::max(last, wash.time.end);
    }
    plan.released.push_back(released);
  }
  for (auto& [solvent, source] : sources) {
    plan.solvents.push_back(solvent);
    plan.sources.push_back(std::move(source));
  }
  plan.end = to_duration(last - plan.start) + looked_at_after;
  return plan;
}

std::optional<RoomJudgement> room_judgement(const Job& job, const VapourPlan& plan) {
  if (!job.room.volume || plan.sources.empty()) return std::nullopt;
  return Judge(job, plan).result();
}

MassPerVolume explosive_mass(const Solvent& solvent) {
  // Source: the ideal gas at 20 C and 1 atm: R x 293.15 K / 101.325 kPa.
  constexpr double litres_per_mole = 24.055;
  return grams_per_cubic_metre(
      1000 *
      solvent.explosive_limit.value.in(fraction)*solvent.molar_mass.value.in(grams_per_mole) /
      litres_per_mole);
}

Measures measures(const std::vector<Solvent>& solvents, const std::vector<std::size_t>& used) {
  constexpr double excursion = 3;
  Measures all;
  for (const std::size_t index : used) {
    const Solvent& solvent = solvents.at(index);
    all.explosive.limits.push_back(explosive_mass(solvent));
    all.eight_hours.limits.push_back(solvent.limit_8h.value);
    all.fifteen_minutes.limits.push_back(solvent.limit_15min ? solvent.limit_15min->value
                                                             : solvent.limit_8h.value * excursion);
  }
  all.moment = all.eight_hours;
  all.eight_hours.window = hours(8);
  all.fifteen_minutes.window = minutes(15);
  return all;
}

RoomAir room_air(const Room& room, const AirChanges& changes, const VapourPlan& plan,
                 const AiringHabit& habit, double release_factor) {
  std::vector<VapourSource> sources = plan.sources;
  for (VapourSource& source : sources) source.release = source.release * release_factor;
  const std::vector<AiringSpan> spans = airing_spans(plan.stretches, habit);
  return {room.volume.value_or(cubic_metres(1)), sources,
          air_stretches(spans, plan.start, room, changes), plan.end};
}

}  // namespace tackfree
