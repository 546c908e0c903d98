// Log entry: what a person reports made into a line of the log, if it can be.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/plan/work_at_hand.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace tackfree {

/// What happened, in the person's words; what is left out follows from the job.
struct Report {
  LogKind kind = LogKind::note;
  Instant at;  ///< when it was so; of work, when it was done
  std::optional<Instant> began_at;
  std::string batch;        ///< empty: the only one
  std::string step;         ///< of other work than coats: the end of its key, `sand-p240`
  std::optional<int> coat;  ///< empty: the next one; of tests and faults the last one that is on
  std::string side;         ///< `back`, `show`, `both`, or the person's `top`, `bottom`
  std::string coating;      ///< empty: the only one
  std::string thinner;      ///< of a tin, in place of a coating
  std::vector<BoughtTins> bought;
  std::string person;             ///< away, free: empty for everybody
  std::optional<Interval> hours;  ///< away, free
  std::optional<Volume> amount;
  std::optional<Temperature> temperature;
  std::optional<Humidity> humidity;
  std::optional<DryTest> test;
  bool passed = false;
  std::optional<Fault> fault;
  std::optional<TinEvent> tin;
  bool insists = false;
  std::optional<int> corrects, corrects_line;
  std::string note;
};

/// What comes of work on a coat that is not dry enough for it. Source: practice.
enum class TooSoon { turned, sanded, hardware_fitted, repaired, coated };

/// As part of a sentence: `a side that is not dry to handle may stick to ...`.
std::string_view words_for(TooSoon too_soon);

/// Dust of this work has come on a coat that was still wet.
struct DustInCoat {
  std::size_t coat = 0;  ///< index into the operations of the standing plan
  friend bool operator==(const DustInCoat&, const DustInCoat&) = default;
};

/// A coat that took so much more or less than expected that it does not count for the rate.
struct FarFromExpected {
  double times = 1;  ///< what was expected
  friend bool operator==(const FarFromExpected&, const FarFromExpected&) = default;
};

/// What the finishing data advises after a fault; empty where it says nothing.
struct RepairAdvice {
  std::string line;
  friend bool operator==(const RepairAdvice&, const RepairAdvice&) = default;
};

/// A coat went on in air that was unfit for it.
struct CoatedInUnfitAir {
  Gate gate = Gate::too_cold;
  friend bool operator==(const CoatedInUnfitAir&, const CoatedInUnfitAir&) = default;
};

/// What comes of what a person reports, to be told before it is written.
using Consequence =
    std::variant<TooSoon, DustInCoat, FarFromExpected, RepairAdvice, CoatedInUnfitAir>;

/// The entry that a report comes to, and what to tell before it is written.
struct UnderstoodReport {
  LogEntry entry;                        ///< without its number
  WorkAtHand standing;                   ///< with what is done before this
  std::optional<std::size_t> operation;  ///< index into the operations of `standing`
  std::vector<Consequence> consequences;
};

/// Nothing, with Problems under the names of the command's options, where the report names nothing
/// of the job, or tells of what cannot be: a later time than `now`, work that is done already, or a
/// coat on one that was not dry enough or sanded as it should be. Of these the last may be insisted
/// on; what that does to the film is then told.
std::optional<UnderstoodReport> understood(Job job, const Report& report, Instant now,
                                           Problems& problems);

}  // namespace tackfree
