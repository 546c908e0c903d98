// Room judgement: the vapour of the whole plan against its limits, and an airing habit that fits.
#pragma once

#include "tackfree/fumes/airing.hpp"
#include "tackfree/fumes/emission.hpp"
#include "tackfree/fumes/exposure.hpp"

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace tackfree {

/// What some coatings give off that no sum of vapours holds: how much is not known.
enum class Uncounted { formaldehyde, isocyanates };

/// Its key among the cautions that a coating names: `formaldehyde`, `isocyanates`.
constexpr std::string_view key_of(Uncounted what) {
  return what == Uncounted::formaldehyde ? "formaldehyde" : "isocyanates";
}

/// What the coats of a plan, and the cleaning of their tools, put into the room's air.
struct VapourPlan {
  std::vector<std::size_t> solvents;  ///< indices into FinishingData::solvents
  std::vector<VapourSource> sources;  ///< the same in the room, since `start`
  std::vector<CoatingStretch> stretches;
  std::vector<Mass> released;  ///< by stretch, with the cleaning of its tools
  std::vector<Uncounted> uncounted;
  Instant start;
  Duration end;
};

VapourPlan vapour_plan(const Job& job, const OperationList& list, const JobVolumes& volumes,
                       const std::vector<CoatEmission>& emissions, const Schedule& schedule);

/// What vapour is measured against, the gravest first.
enum class VapourLimit { quarter_explosive, tenth_explosive, fifteen_minutes, eight_hours };
inline constexpr std::size_t vapour_limit_count = 4;

/// One limit over the whole plan. 1 is at the limit.
struct LimitJudgement {
  double share = 0;
  Instant at;                         ///< when it is highest; end of the window for a mean
  std::optional<AirFlow> least_flow;  ///< all the time, mixing included; nothing: no flow found
};

/// The vapour at one moment, over its 8-hour limits: 1 is at them.
struct VapourAt {
  Instant at;
  double times = 0;
};

/// One stretch of coating with its airing, up to the next one.
struct StretchJudgement {
  std::vector<std::size_t> steps;  ///< indices into Schedule::steps
  Interval coating;
  Mass solvent;
  std::vector<AiringSpan> airing;            ///< that begin with it or after it
  std::optional<AiringSpan> airing_goes_on;  ///< of an earlier stretch, as this one begins
  double explosive_share = 0;                ///< highest, of the lower explosive limit
  double fifteen_minutes = 0;                ///< highest mean over its limit
  double eight_hours = 0;                    ///< highest mean over its limit
  std::optional<Instant> under_limit_at;     ///< from then the air is under its 8-hour limits;
                                             ///< nothing: not before the next stretch of coating
  std::optional<Instant> under_tenth_at;     ///< and under a tenth of them
  std::vector<VapourAt> vapour;  ///< each quarter of an hour from its beginning for a day, or up
                                 ///< to the next stretch
  bool rises_again = false;      ///< once its airing ends it passes the 8-hour limits while closed
  bool too_little = false;       ///< for this stretch more air is needed than the habit brings
};

enum class HabitVerdict { enough, too_little };

struct RoomJudgement {
  AiringHabit habit;
  bool habit_given = false;
  std::vector<std::size_t> solvents;  ///< indices into FinishingData::solvents
  std::array<LimitJudgement, vapour_limit_count> limits{};  ///< by VapourLimit
  double flow_mixing = 1;                                   ///< K within the least flows
  std::vector<StretchJudgement> stretches;
  HabitVerdict verdict = HabitVerdict::enough;
  std::optional<AiringHabit> proposed;  ///< more air than the habit brings, never less
  double proposed_eight_hours = 0;      ///< the highest mean with it, over its limit
  std::vector<Uncounted> uncounted;     ///< given off too, and in none of the figures above

  const LimitJudgement& limit(VapourLimit l) const {
    return limits.at(static_cast<std::size_t>(l));
  }
  /// A quarter of the explosive limit is reached: the coat must not go on like this.
  bool stops() const { return limit(VapourLimit::quarter_explosive).share >= 1; }
};

/// The plan's vapour in the job's room under its habit, or in a closed room when none is given.
/// Every figure is the worst of three release rates: as given, half and double, because peaks grow
/// with fast release and airing times with slow. Source of the factor 2: assumption of this
/// project. Shares of the explosive limit: State of Washington, WAC 296-304-03009 (10 %),
/// International Fire Code 2018, 2404.7.3 (25 %). Where a solvent has no 15-minute limit, three
/// times its 8-hour limit stands in: assumed, after the excursion guidance of ACGIH (from memory).
/// Concentrations are not capped at saturation, which errs towards more vapour.
/// Nothing when the room's volume is not known or no dated coat releases solvent.
std::optional<RoomJudgement> room_judgement(const Job& job, const VapourPlan& plan);

/// The measures of a plan's solvents: against explosion (a moment), 15 minutes, 8 hours, and the
/// moment against the 8-hour limits.
struct Measures {
  Measure explosive, fifteen_minutes, eight_hours, moment;
};
Measures measures(const std::vector<Solvent>& solvents, const std::vector<std::size_t>& used);

/// The lower explosive limit as mass in air at 20 C: share x molar mass / 24.055 L/mol.
MassPerVolume explosive_mass(const Solvent& solvent);

/// Room air of a plan under a habit, with every release rate times `release_factor`.
RoomAir room_air(const Room& room, const AirChanges& changes, const VapourPlan& plan,
                 const AiringHabit& habit, double release_factor);

}  // namespace tackfree
