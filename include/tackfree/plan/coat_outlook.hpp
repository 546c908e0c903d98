// Coat outlook: what comes of a coat at one hour, which rules forbid it, and the best hour soon.
#pragma once

#include "tackfree/air/coating_limits.hpp"
#include "tackfree/air/drying_explained.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// A rule that a coat at this hour breaks.
struct GateAt {
  Gate gate = Gate::too_cold;
  std::optional<Instant> opens;  ///< the next start that keeps it, within two weeks
};

/// A start that keeps every rule and dries soonest after it.
struct BestHour {
  Instant at;
  Duration wait;  ///< until sanded, or recoated where the class is not sanded
};

struct CoatOutlook {
  std::size_t coating = 0;  ///< index into Job::coatings
  Instant applied;          ///< when putting on begins; drying counts from its end
  Minutes putting_on{0};
  AirState air;
  Humidity humidity;
  Temperature dew_point;
  Temperature surface;
  Fraction wood_moisture;  ///< where wood settles in this air
  std::vector<DryingExplanation> stages;
  std::vector<Stage> never;  ///< stages not reached within the job's horizon
  std::vector<GateAt> gates;
  std::optional<Instant> all_open;  ///< the next start that keeps every rule, within two weeks
  std::optional<BestHour> best;     ///< within seven days, on full hours
  std::optional<Instant> recoat_unsanded_until;
  std::optional<BlushRisk> blush;  ///< of classes with a humidity caution
  std::optional<Instant> typical_from;
};

/// The outlook of a coat put on from `applied` on, in the air from the earlier of `now` and that,
/// with the readings in the log. The coat takes as long to put on as the planning grid, at least;
/// nothing and Problems when the air does not reach that far.
std::optional<CoatOutlook> coat_outlook(const Job& job, std::size_t coating, Instant applied,
                                        Instant now, Problems& problems);

/// For each step of the schedule that is a coat, its stages from touch-dry to light use explained;
/// for other steps nothing.
std::vector<std::vector<DryingExplanation>> explained_coats(const Job& job,
                                                            const OperationList& list,
                                                            const AirSeries& air,
                                                            const std::vector<DryingClock>& clocks,
                                                            const Schedule& schedule);

}  // namespace tackfree
