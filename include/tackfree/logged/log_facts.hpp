// Log facts: which lines of the log fit a job, and what they make of its operations.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation_list.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
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

/// What the log says of the operations, line by line.
struct LogFacts {
  std::map<std::string, LogEntry, std::less<>>
      work;                          ///< by key: coats, other work, what is skipped
  std::vector<LeftOutLine> misfits;  ///< in the order of lines
};

/// A line that names no operation of the list, names one twice, tells of a time after `now`, or of
/// work that ended before the work it follows, and one of a coating that the job does not have, is
/// a misfit, with what is wrong with it.
LogFacts log_facts(const OperationList& list, const Job& job, Instant now);

/// Marks what is done. What a done operation waited for in its batch is done too, whether it was
/// logged or not; dusting off and wiping off are part of their coat. What would have waited for a
/// skipped coat waits for the one below it, which is the last where the last were skipped.
void mark_done(OperationList& list, const LogFacts& facts);

}  // namespace tackfree
