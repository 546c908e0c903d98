// Drying: the clock that says when a coat reaches each stage in the air of the room.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/model/coating.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace tackfree {

/// How fast a film dries in `air`, relative to 23 C, 50 % RH, 0.10 m/s; 0 when it has stopped.
/// The film has the temperature of the air. See docs/formulas.md, "The drying clock".
double drying_rate(const DryingLaw& law, const AirState& air, Speed air_speed);

/// Factor of air speed: min(2, ((v + 0.05)/0.15)^n).
double air_speed_factor(double exponent, Speed air_speed);

/// Time to a stage of label time `label` in unchanging air; nothing if it never dries.
std::optional<Duration> drying_duration(const Coating& coating, Stage stage, const AirState& air,
                                        Speed air_speed, double film_ratio = 1.0);

/// The clock of one coating over the air of one job. It integrates the rate once, minute by minute
/// in fixed point, and then answers by look-up, so planning and "dry when?" never disagree.
class DryingClock {
 public:
  /// `faster_than_label` false: handle, recoat and sand are never sooner than the label's hours.
  DryingClock(const Coating& coating, const AirSeries& air, Speed air_speed,
              bool faster_than_label = false);

  /// The first whole minute at which a coat finished at `applied` has reached `stage`; nothing when
  /// the label has no such stage or it is not reached within the series. `film_ratio` (over 0) is
  /// the wet film over the class's own. Later application never reaches a stage earlier, and a
  /// stage is never reached before one with a shorter label time. What is applied before the series
  /// begins starts to dry with it.
  std::optional<Instant> reached(Stage stage, Instant applied, double film_ratio = 1.0) const;

  /// The first whole minute by which a coat finished at `applied` has dried as far as `label` hours
  /// at the label's conditions take it, and no sooner than those hours unless faster_than_label;
  /// the film counts as for recoating. For waits between two classes.
  std::optional<Instant> dried_for(Duration label, Instant applied, double film_ratio = 1.0) const;

  /// Without the label's floor and not rounded, counted from `applied`: for checks and reports.
  std::optional<Duration> exact_duration(Stage stage, Instant applied,
                                         double film_ratio = 1.0) const;

 private:
  /// What a stage of the label asks for.
  struct Need {
    Stage stage;
    Duration label;
    double amount;         ///< progress for a film of the class's own thickness
    double film_exponent;  ///< of the film ratio
    Minutes at_least;      ///< rule 1, else 0
  };
  struct Wait {
    std::int64_t amount;
    Minutes at_least;
  };
  /// For `stage` and every stage that comes before it.
  std::optional<Wait> wait_for(Stage stage, double film_ratio) const;
  std::size_t minute_of(Instant at) const;
  std::optional<std::size_t> minute_done(Instant applied, std::int64_t amount) const;
  std::optional<Instant> done(Instant applied, const Wait& wait) const;

  Interval covers_;
  std::vector<std::int64_t> progress_;  ///< at each minute: reference minutes done, fixed point
  std::vector<Need> needs_;             ///< in order of the label's hours, then of Stage
  double label_step_ = 0;               ///< progress in one minute at the label's conditions
  double recoat_exponent_ = 0;          ///< of the film ratio
  bool label_is_least_ = true;          ///< rule 1
};

}  // namespace tackfree
