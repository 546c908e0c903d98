// Log facts: what the lines of the log make of a job's operations, coats and air.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/operations/operation_list.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// Every thermometer reading of the log, those taken with a coat too.
std::vector<AirReading> readings_in_log(const History& history);

/// When the first coat of the log was begun; nothing without one.
std::optional<Instant> first_coat_at(const History& history);

/// Coats that were sanded for although their class asks for none: `operation_list` then lists it.
KeyedCoats sanded_by_log(const Job& job);

/// The operation called `key`, or nothing.
const Operation* operation_called(const OperationList& list, std::string_view key);

/// Marks what is done. What a done operation waited for in its batch is done too, whether it was
/// logged or not; dusting off and wiping off are part of their coat. What would have waited for a
/// skipped coat waits for the one below it, which is the last where the last were skipped. A line
/// that names no operation of the job, names one twice, tells of a time after `now`, or of work
/// that ended before the work it follows, and one of a coating that the job does not have, is
/// returned with what is wrong with it, in the order of lines: `list` is of use where there is
/// none.
std::vector<LeftOutLine> mark_done(OperationList& list, const Job& job, Instant now);

/// What the thumb tries: dry to sand, where the class is sanded between coats; else to recoat.
Stage tried_stage(const Coating& coating, DryTest test);

/// Fills History::coats and History::tried. `list` is marked, and its litres are those that were
/// expected before anything was learnt.
void note_lessons(Job& job, const OperationList& list, const AirSeries& air);

/// Marks what the trials say of done coats. A coat that failed one is expected to need more drying
/// than it had had, as `expected_need` has it with what is known of its coating.
void mark_trials(OperationList& list, const Job& job, const AirSeries& air);

}  // namespace tackfree
