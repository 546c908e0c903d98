// Set dates: which of a batch's dates forbid its work or its coats at a time.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/closing_rules.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// The dates of its batch that hold for one operation, looked up once for all times.
class SetDates {
 public:
  SetDates(const Job& job, const Operation& operation);

  /// Whether any date is set for this kind of work.
  bool any() const;
  /// The rule of the solver that forbids the operation at `time`, or `solver::no_rule`: it begins
  /// before its batch may be begun or, for a coat, touches a day without coating or leaves the
  /// hours it is set for.
  solver::Rule rule(Interval time) const;

 private:
  std::optional<Instant> not_before_;
  std::vector<Interval> no_coating_, set_for_;
};

}  // namespace tackfree
