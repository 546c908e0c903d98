// Operation: one thing to do to a batch, with its time, its material and what it waits for.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/job.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

enum class OperationKind {
  sand_bare,
  raise_grain,
  sand_raised,
  fill_pores,
  sand_filler,
  dust_off,
  coat,
  wipe_off,
  turn_over,
  sand_between,
  fit_hardware,
  finishing_touch,
  repair
};

/// Work on a finish that is complete.
constexpr bool is_after_coats(OperationKind kind) {
  return kind == OperationKind::fit_hardware || kind == OperationKind::finishing_touch;
}

/// A short name: `sand bare`, `raise grain`, `sand raised grain`, `fill pores`, `sand filler`,
/// `dust off`, `coat`, `wipe off`, `turn over`, `sand between`, `fit hardware`,
/// `finishing touch`, `repair`.
std::string_view word_for(OperationKind kind);

/// `back`, `show`, `both`.
std::string_view word_for(Side side);

/// What an operation waits for. With a stage, it is the stage of the coat `operation`; without, the
/// end of that operation. `delay` is added.
struct Wait {
  std::size_t operation = 0;
  std::optional<Stage> stage;
  Duration delay;
  /// In place of a stage: until the coat has dried as far as this long at the label's conditions.
  std::optional<Duration> dry_for;
  bool next_day = false;  ///< until the local day after it
  /// Coats that dry as one, from `operation` on: their films together have to reach the stage.
  int films = 1;
};

/// What the log makes of an operation: a fact that never moves.
struct Done {
  Interval time;          ///< of the work; a coat dries from its end
  bool logged = true;     ///< else it is taken as done because later work on the batch is
  bool skipped = false;   ///< left out on purpose
  bool insisted = false;  ///< done although a rule spoke against it
  /// Coats only, by a trial that failed: not dry to `not_dry_to`, or further, before this.
  std::optional<Instant> not_dry_before;
  Stage not_dry_to = Stage::handle;
  /// Coats only, by a thumb test that was passed: dry to handle, recoat and sand by then.
  std::optional<Instant> dry_since;
  /// Coats put on before they should have been: they count as on from here, when they would have
  /// been if the person had waited. Assumed.
  std::optional<Instant> counts_from;
  double films_wet = 1.0;  ///< with what was still to dry under it, in films of its own. Assumed.

  /// From when a coat dries, as it counts.
  Instant dries_from() const { return counts_from.value_or(time.end); }
};

struct Operation {
  /// batch / system step / coat / side / what, each part a name: survives recomputation.
  std::string key;
  OperationKind kind = OperationKind::coat;
  std::size_t batch = 0;  ///< index into Job::batches
  std::size_t step = 0;   ///< index into the system's steps
  int coat = 0;           ///< coat this belongs to, from 1; 0 for bare wood
  int coats = 0;          ///< how many the step has
  Side side = Side::both;
  Duration work;  ///< attended time, without set-up and clean-up
  Area area;
  std::optional<Grit> grit;            ///< sanding only
  bool power_sanding = false;          ///< forbidden in quiet hours
  bool scuffed = false;                ///< by hand, a few strokes: it lies thin over colour
  double sheets = 0;                   ///< sheets or discs of `grit`, not rounded
  std::optional<std::size_t> coating;  ///< index into Job::coatings, coats only
  std::optional<std::size_t> method;   ///< index into Job::data.methods, coats only
  Volume mixed, liquid, thinner;       ///< coats only: all together, coating, thinner
  double film_ratio = 1.0;             ///< wet film over the class's own
  /// Last coats that melt into the ones below: the whole film over one for normal wear, at least 1.
  double whole_film = 1.0;
  int pots = 0;       ///< two-part coats only: mixed one after the other, each within its life
  Duration pot_life;  ///< that the pots are counted with
  int portions = 0;   ///< coats that are wiped off only: each put on and wiped before the next
  /// It starts exactly this long after the end of the operation before it in the list, as part of
  /// one stretch of work with it.
  std::optional<Duration> right_after;
  std::vector<Wait> waits;
  /// Coats only: goes on unsanded, at least this long before the window of the coat below shuts.
  std::optional<Duration> window_to_spare;
  std::optional<std::size_t> touch;    ///< index into Job::data.touches, finishing touches only
  std::optional<Fault> fault;          ///< repairs only
  bool spots = false;                  ///< repairs only: of spots; around them all is as it was
  bool takes_off = false;              ///< repairs only: the coat that went wrong is washed off
  int again = 0;                       ///< coats only: how often a fault has cost it so far
  std::optional<Done> done;            ///< by the log; then it is not scheduled any more
  std::optional<Instant> starts_last;  ///< where the last plan has it begin
  std::vector<std::string> how;        ///< two or three lines of the finishing data

  /// Left out on purpose, by the log.
  bool skipped() const { return done && done->skipped; }

  /// Sanding of all of a side, so that whatever comes next holds on it.
  bool gives_key() const { return grit && !spots; }

  /// The film that a stage has to dry through, over the class's own.
  double film_for(Stage stage) const {
    const double own = depth_of(stage) == Depth::through ? film_ratio * whole_film : film_ratio;
    return done ? own * done->films_wet : own;
  }
};

/// What a batch's finish will bear after its last coat, and by when: filled by the schedule.
struct Outcome {
  std::size_t batch = 0;
  Stage stage = Stage::light_use;
  std::vector<std::size_t> coats;  ///< last coats of its sides; the latest counts
};

/// Every operation of the job, each after the ones it waits for.
struct OperationList {
  std::vector<Operation> operations;
  std::vector<Outcome> outcomes;
};

}  // namespace tackfree
