// Set dates: which of a batch's dates forbid its work or its coats at a time.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/closing_rules.hpp"

namespace tackfree {

/// Whether any date is set for this kind of work.
bool has_set_dates(const Job& job, const Operation& operation);

/// The rule of the solver that forbids the operation at `time`, or `solver::no_rule`: it begins
/// before its batch may be begun or, for a coat, touches a day without coating or leaves the hours
/// it is set for.
solver::Rule rule_of_dates(const Job& job, const Operation& operation, Interval time);

}  // namespace tackfree
