// Thirst: how much more or less than expected this job takes from the tins, by the log.
#pragma once

#include "tackfree/model/history.hpp"
#include "tackfree/model/job.hpp"

#include <vector>

namespace tackfree {

/// Factor on the expected need of each of Job::coatings: 1 with no coats logged, and for a coating
/// that no system uses. `expected` in the log is the need before anything was learnt. The logarithm
/// of used / expected is taken as normal with known reading spread; its mean has a normal prior of
/// mean 0, so the posterior is the conjugate one: precision-weighted mean of prior and readings.
/// Prior width is the spread of the method (the widest, where a coating has several), reading
/// spread 0.10 (both assumed).
/// Source: A. Gelman et al., Bayesian Data Analysis, 3rd ed., sec. 2.5 (normal with known variance;
/// from memory).
std::vector<double> thirst_factors(const Job& job);

/// The posterior mean of a normal mean with known variances.
/// `prior_sd` and `reading_sd` > 0; with no readings it is the prior mean.
double posterior_mean(double prior_mean, double prior_sd, double reading_sd,
                      const std::vector<double>& readings);

}  // namespace tackfree
