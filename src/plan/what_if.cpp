#include "tackfree/plan/what_if.hpp"

#include "tackfree/plan/make_plan.hpp"

#include <utility>

namespace tackfree {

namespace {

void apply(Job& job, const ConditionedAir& air) {
  AirMix mix = as_mix(job.air);
  mix.conditioned.push_back(air);
  job.air = std::move(mix);
}

/// What the shop's calendar says holds for all of the people.
void apply(Job& job, const AddedHours& hours) {
  job.calendar.added.push_back(hours);
  for (Person& person : job.people) person.hours.added.push_back(hours);
}

}  // namespace

Job with_change(Job job, const Change& change) {
  std::visit([&](const auto& each) { apply(job, each); }, change);
  return job;
}

std::optional<WhatIf> what_if(const Job& job, const Change& change, Instant now,
                              solver::Effort& effort) {
  Problems untold;  // of the job without the change they are known
  const auto plan = make_plan(with_change(job, change), now, untold, {}, &effort);
  if (!plan) return std::nullopt;
  WhatIf result{.ready_at = plan->schedule.ready_at, .begins = {}};
  for (const DatedStep& step : plan->schedule.steps)
    if (!step.pieces.empty())
      result.begins.emplace(plan->list.operations.at(step.operation).key, step.begin());
  return result;
}

}  // namespace tackfree
