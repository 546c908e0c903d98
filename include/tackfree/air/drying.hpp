// Drying: the clock that says when a coat reaches each stage in the air of the room.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/drying_progress.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/model/coating.hpp"

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace tackfree {

/// Rule 1 of the trade: the clock may lengthen the label's waits for handling, recoating and
/// sanding, never shorten them. Source: practice.
bool label_is_floor(Stage stage);

/// The clock of one coating over the air of one job. It integrates the rate once, in fixed point,
/// and then answers by look-up, so planning and "dry when?" never disagree.
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

 private:
  using Progress = std::shared_ptr<const DryingProgress>;  ///< coatings of one law share one
  /// What a stage and all before it ask for, where none has rows of its own and the film is the
  /// class's.
  struct PlainNeed {
    std::int64_t amount = 0;
    Minutes at_least{0};
  };
  friend std::vector<DryingClock> drying_clocks(const std::vector<Coating>& coatings,
                                                const AirSeries& air, Speed air_speed,
                                                bool faster_than_label);
  /// What a stage of the label asks for.
  struct Need {
    Stage stage;
    Duration label;
    std::size_t track;     ///< whose progress counts
    double amount;         ///< progress for a film of the class's own thickness
    double film_exponent;  ///< of the film ratio
    Minutes at_least;      ///< rule 1, else 0
  };
  DryingClock(const Coating& coating, Speed air_speed, bool faster_than_label,
              const RatePoints& points, Progress by_law);
  void add_need(const Coating& coating, Stage stage, const RatePoints& points, Speed air_speed);
  /// The progress that `need` asks for, at this film; nothing when no time would do.
  static std::optional<std::int64_t> amount_of(const Need& need, double film_ratio);
  bool has(Stage stage) const;
  void note_plain_needs();

  Interval covers_;
  std::vector<Progress> tracks_;  ///< the law's own first
  std::array<std::optional<PlainNeed>, stage_count> plain_;
  std::vector<Need> needs_;     ///< in order of the label's hours, then of Stage
  double label_step_ = 0;       ///< progress in one minute at the label's conditions
  double slowness_ = 1.0;       ///< by the log
  double recoat_exponent_ = 0;  ///< of the film ratio
  bool label_is_least_ = true;  ///< rule 1
};

/// A clock for each coating; those of one law share their progress.
std::vector<DryingClock> drying_clocks(const std::vector<Coating>& coatings, const AirSeries& air,
                                       Speed air_speed, bool faster_than_label);

}  // namespace tackfree
