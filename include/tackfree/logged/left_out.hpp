// Left out: lines of the log that do not fit the job, and the command that withdraws each.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/logged/log_facts.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation_list.hpp"
#include "tackfree/takeoff/surface_takeoff.hpp"

namespace tackfree {

/// The work on a job, marked with what is done, before anything is learnt.
struct LoggedWork {
  LogFacts facts;  ///< all of them fit
  KeyedCoats keyed;
  OperationList list;
  /// Lines that do not fit the job are moved from the entries to those that are left out: a step or
  /// coating that the job does not have (any more), a time after `now`, an order that cannot be.
  History history;
};

/// The work as the log has it. `job` is split into lots.
LoggedWork logged_work(const Job& job, const SurfaceTakeoff& takeoff, Instant now);

/// The history that a plan as of `now` rests on, also of a job that cannot be planned.
History fitting_history(const Job& job, Instant now);

/// What is wrong with each line that is left out of the job's history, with the command that
/// withdraws it.
Problems left_out_problems(const Job& job);

}  // namespace tackfree
