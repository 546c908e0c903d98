// Coat trials: what the log's coats and trials of coats teach, and which of them are not dry yet.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/learning/lessons.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation_list.hpp"

namespace tackfree {

/// What the thumb tries: dry to sand, where the class is sanded between coats; else to recoat.
Stage tried_stage(const Coating& coating, DryTest test);

/// What the coats of the log teach. `list` is marked, and its litres are those that were expected
/// before anything was learnt.
Lessons lessons_of(const Job& job, const OperationList& list, const AirSeries& air);

/// Marks what the trials say of done coats. A coat that failed one is expected to need more drying
/// than it had had, as `expected_need` has it with what is known of its coating.
void mark_trials(OperationList& list, const Job& job, const AirSeries& air);

}  // namespace tackfree
