// Scheduling problem: activities, lags, workers, resources, sessions and exclusions, in slots.
#pragma once

#include "tackfree/solver/open_time.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace tackfree::solver {

/// A half-open run of slots.
struct Run {
  Slot begin = 0;
  Slot end = 0;
  friend bool operator==(const Run&, const Run&) = default;
};

constexpr bool overlap(Run a, Run b) { return a.begin < b.end && b.begin < a.end; }

/// A delay that depends on when the earlier activity ends: entry e is the first slot allowed when
/// it ends at slot e, or never. Not decreasing in e.
using LagTable = std::vector<Slot>;

/// An amount of a resource, taken from the start of an activity on.
struct Use {
  std::size_t resource = 0;
  int amount = 1;
  /// Held until this table says (index into `tables`, by the activity's end); nothing: until its
  /// end.
  std::optional<std::size_t> held_until;
};

/// An amount of a resource that something outside the problem holds from slot 0 on.
struct Standing {
  std::size_t resource = 0;
  int amount = 1;
  Slot until = 0;
};

/// One piece of work. A release date is an open time that begins late, a deadline one that ends
/// early.
struct Activity {
  Slot duration = 1;
  /// Index into `open_times`. For a whole activity: the slots at which it may start; those leave
  /// room for its duration inside one window. For a splittable one: the slots at which it may run;
  /// it is cut only where those end, and the worker does nothing else until it is done.
  std::size_t open_time = 0;
  bool splittable = false;
  /// Makes dust: kept apart from everything wet in the same room.
  bool dusty = false;
  /// Wet until this table says (index into `tables`, by its end); nothing for dry work.
  std::optional<std::size_t> wet_until;
  /// Activities of one product in one window share set-up and clean-up.
  std::optional<std::size_t> product;
  Slot product_from = 0;  ///< from its begin until the product is used; what is before is only near
  std::size_t room = 0;
  /// Dust does no harm to what is of the same family.
  std::optional<std::size_t> family;
  int workers = 1;  ///< 0 for work that needs nobody; else 1
  std::vector<Use> uses;
};

/// `to` starts no sooner than the end of `from` plus `delay`, or than `table[end of from]` + delay.
/// It never starts before `from` starts, so a delay is at least minus the duration of `from`.
struct Lag {
  std::size_t from = 0;
  std::size_t to = 0;
  std::optional<std::size_t> table;
  Slot delay = 0;
};

/// `to` starts no later than the end of `from` plus `delay`, or than `table[end of from]` + delay;
/// `never` in the table is no limit. It may start before `from`.
struct MaximumLag {
  std::size_t from = 0;
  std::size_t to = 0;
  std::optional<std::size_t> table;
  Slot delay = 0;
};

/// Work around the activities of one product in one window.
struct Product {
  Slot set_up = 0;
  Slot clean_up = 0;
  /// A longer pause between two of its activities begins with a clean-up too.
  Slot uncleaned = never;
};

/// What the schedule is for: `table[end of activity]`, the latest of which is to be early.
struct Goal {
  std::size_t activity = 0;
  std::size_t table = 0;
};

struct SchedulingProblem {
  Slot horizon = 0;
  int workers = 1;
  std::vector<Run> windows;  ///< when the workers are there; disjoint, in order
  /// An entry for each worker who is not there in a window, in order of begin.
  std::vector<Run> away;
  std::vector<OpenTime> open_times;
  std::vector<LagTable> tables;
  std::vector<Product> products;
  std::vector<Activity> activities;  ///< each after the ones it lags behind
  std::vector<Lag> lags;
  std::vector<MaximumLag> maximum_lags;
  std::vector<int> resources;  ///< the capacity of each
  std::vector<Standing> standing;
  std::vector<Goal> goals;
  std::vector<Run> late;    ///< slots in which work counts as late; disjoint, in order
  Slot dust_settles = 0;    ///< from the end of dusty work until something wet may start
  Slot shortest_piece = 1;  ///< of a splittable activity, unless less is left to do
};

/// What kept an activity from starting sooner.
struct Hold {
  /// `order`: put off for the good of the whole. `maximum_lag`: what comes after it cannot come so
  /// soon, or came too late.
  enum class By { lag, rule, window, worker, dust, order, resource, maximum_lag } by = By::rule;
  Slot until = 0;
  std::size_t lag = 0;       ///< By::lag and By::maximum_lag: index into `lags`, `maximum_lags`
  Rule rule = no_rule;       ///< By::rule
  std::size_t resource = 0;  ///< By::resource
};

struct SolvedActivity {
  std::vector<Run> pieces;  ///< empty when it could not be placed
  std::vector<Hold> holds;  ///< in order; the last one binds
  bool placed() const { return !pieces.empty(); }
  Slot begin() const { return pieces.front().begin; }
  Slot end() const { return pieces.back().end; }
};

/// The activities of one product in one window.
struct SolvedSession {
  std::size_t product = 0;
  std::size_t window = 0;
  Run coats;  ///< from the first start to the last end, without set-up and clean-up
  std::vector<std::size_t> activities;
};

struct Solution {
  std::vector<SolvedActivity> activities;  ///< by activity
  std::vector<SolvedSession> sessions;
};

/// How good a solution is; less is better, compared in this order.
struct Worth {
  std::size_t unplaced = 0;
  Slot ready = 0;  ///< latest goal; never when a goal's activity is not placed
  std::size_t sessions = 0;
  Slot late = 0;  ///< slots of work in late hours
  std::int64_t sum_of_starts = 0;
  friend auto operator<=>(const Worth&, const Worth&) = default;
};

Worth worth(const SchedulingProblem& problem, const Solution& solution);

/// The clean-ups in pauses of one session's activities, which use the product from their
/// `product_from` on: `used` holds these runs, in any order.
std::vector<Run> cleanings(const Product& product, std::vector<Run> used);
/// When an activity that starts at `start` uses its product.
inline Run used(const Activity& activity, Slot start) {
  return {start + activity.product_from, start + activity.duration};
}
/// Are there workers for the clean-ups in pauses of all sessions, as for all other work?
bool has_workers_for_cleanings(const SchedulingProblem& problem, const Solution& solution);

/// The pieces of an activity that starts at `start`, an open slot; none when it does not get done
/// within the horizon, or its first piece would be shorter than is worth starting.
std::vector<Run> pieces_from(const SchedulingProblem& problem, const Activity& activity,
                             Slot start);

/// When an activity that starts at `start`, an open slot, is done; never when `pieces_from` has
/// none.
Slot end_from(const SchedulingProblem& problem, const Activity& activity, Slot start);

/// When a lag is over for an activity that ended at `end`: its table's entry, or `end`, plus the
/// delay.
Slot after(const SchedulingProblem& problem, const Lag& lag, Slot end);
Slot after(const SchedulingProblem& problem, const MaximumLag& lag, Slot end);

/// How long a use holds its resource, for an activity at `work`.
Run held(const SchedulingProblem& problem, const Use& use, Run work);

/// Does the dust of `dusty` harm what `wet` makes wet?
bool disturbs(const Activity& dusty, const Activity& wet);

/// The window that holds the slot, or nothing.
std::optional<std::size_t> window_at(const SchedulingProblem& problem, Slot slot);

}  // namespace tackfree::solver
