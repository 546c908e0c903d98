// Schedule: operations with their days and hours, and what held each one back.
#pragma once

#include "tackfree/air/coating_limits.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/operations/operation.hpp"

#include <array>
#include <optional>
#include <vector>

namespace tackfree {

/// The kind of rule that kept a step from starting sooner.
enum class HeldBy {
  now,             ///< nothing: it starts when the plan starts
  previous_step,   ///< the work before it had to be done
  drying,          ///< a coat had to reach a stage
  air,             ///< the air was outside the coating's limits
  calendar,        ///< nobody at work, or the window too short for it
  quiet_hours,     ///< no power sanding at this time
  person,          ///< the person was busy with another step
  dust,            ///< sanding dust and wet boards kept apart
  coats_a_day,     ///< coats that melt together: no more today
  pin,             ///< the coat is set for another day or hour
  no_coating_day,  ///< a day on which no coat goes on
  not_before,      ///< the batch may not be begun yet
  due,             ///< the batch would not be ready when it is due
  space,           ///< no room to dry
  last_plan,       ///< nothing: it stays where the last plan had it
  order,  ///< nothing: it was put off so that the whole is ready sooner or in fewer sessions
};

/// One reason, until when it held. The last of a step's reasons is the one that binds.
struct Held {
  HeldBy by = HeldBy::now;
  Instant until;
  std::optional<std::size_t> operation;  ///< the step waited for (previous_step, drying)
  std::optional<Stage> stage;            ///< drying
  std::optional<Duration> dry_for;       ///< drying without a stage: hours at label conditions
  int films = 1;                         ///< drying: so many coats, from that step on, as one
  std::optional<Gate> gate;              ///< air
};

struct DatedStep {
  std::size_t operation = 0;     ///< index into OperationList::operations
  std::vector<Interval> pieces;  ///< attended; one for a coat, more where sanding is split
  std::vector<Held> held;
  std::array<std::optional<Instant>, stage_count> reaches;  ///< coats only
  std::optional<std::size_t> session;                       ///< coats only
  std::optional<Instant> dries_from;  ///< coats only: when it is on, or wiped off
  std::vector<std::size_t> by;        ///< who does each piece; empty where one person does all
  bool on_typical_air = false;        ///< rests on air repeated after the last known hour

  Instant begin() const { return pieces.front().begin; }
  Instant end() const { return pieces.back().end; }
};

/// One stretch of one product's coats: set-up, coats, clean-up.
struct Session {
  std::size_t coating = 0;
  std::size_t method = 0;
  Interval set_up;
  Interval clean_up;
  std::vector<std::size_t> steps;                     ///< indices into Schedule::steps, in order
  std::optional<std::size_t> set_up_by, clean_up_by;  ///< people, where there are several
};

/// What a coat is put on with.
enum class Tool { brush, roller, gun, cloth };

/// A pause between two coats of a session in which the tool would dry if it just lay there.
struct ToolRest {
  std::size_t dated_step = 0;  ///< index into Schedule::steps: the coat before it
  Interval pause;
  Tool tool = Tool::brush;
  bool wrapped = false;  ///< kept airtight; else it is cleaned, and laid ready again after it
  Interval cleaning;     ///< at the beginning of the pause; empty where it is wrapped
};

/// A kind of rule that the person may give up.
enum class ConflictingRule {
  quiet_hours,
  no_coating_days,
  space,
  not_before,
  pins,
  air,
  working_hours
};

/// On how many days with working hours a rule keeps a step out.
struct ClosedDays {
  HeldBy by = HeldBy::calendar;
  std::optional<Gate> gate;
  std::size_t days = 0;
};

/// A step for which no time was found, and the rule that forbids it.
struct Unplaced {
  std::size_t operation = 0;
  HeldBy by = HeldBy::calendar;
  std::optional<Gate> gate;
  std::optional<std::size_t> waits_for;  ///< the operation waited for (previous_step, drying)
  /// Rules that cannot hold together, where there are several: without any one it has a time.
  std::vector<ConflictingRule> conflict;
  Minutes longest_stretch{0};           ///< of working hours, where they are among those rules
  std::size_t work_days = 0;            ///< days with working hours from when its waits are over
  std::vector<ClosedDays> closed = {};  ///< those of them with no start, the commonest rule first
};

/// When a batch will bear something; nothing when that is not reached within the plan's horizon.
struct DatedOutcome {
  std::size_t batch = 0;
  Stage stage = Stage::light_use;
  std::optional<Instant> at;
};

/// What is proved of a schedule, within the rules and figures of this plan.
struct Proof {
  Instant ready_no_sooner_than;  ///< no schedule is ready for light use before this
  bool earliest_ready = false;   ///< none is ready sooner than this one
  bool fewest_sessions = false;  ///< and none ready then has fewer sessions
};

struct Schedule {
  Interval span;                 ///< from now to the horizon
  std::vector<DatedStep> steps;  ///< in order of time
  std::vector<Session> sessions;
  std::vector<ToolRest> tool_rests;  ///< in order of time
  std::vector<DatedOutcome> outcomes;
  std::vector<Unplaced> unplaced;
  /// When the last batch may be used lightly; nothing when something could not be placed.
  std::optional<Instant> ready_at;
  std::optional<Proof> proof;
};

}  // namespace tackfree
