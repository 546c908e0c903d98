// Posterior: what readings of one quantity leave of a prior guess, by the conjugate normal update.
#pragma once

#include <vector>

namespace tackfree {

/// The posterior mean of a normal mean with known variances: the precision-weighted mean of prior
/// and readings. `prior_sd` and `reading_sd` > 0; with no readings it is the prior mean.
/// Source: A. Gelman et al., Bayesian Data Analysis, 3rd ed., sec. 2.5 (normal with known variance;
/// from memory).
double posterior_mean(double prior_mean, double prior_sd, double reading_sd,
                      const std::vector<double>& readings);

/// The spread that `count` readings leave of the prior: it serves as the prior of later readings.
/// Source as above.
double posterior_sd(double prior_sd, double reading_sd, int count);

/// Is a reading so far from the prior mean that one would ask about it: more than 2.5 standard
/// deviations of the prior predictive, sqrt(prior_sd^2 + reading_sd^2)? Source: assumed.
bool is_outlier(double prior_sd, double reading_sd, double reading);

/// The mean of a normal quantity of which it is known that it is over `least`: mean + sd x the
/// inverse Mills ratio. Source: the mean of a truncated normal distribution, N. L. Johnson et al.,
/// Continuous Univariate Distributions, vol. 1, sec. 13.10 (from memory).
double mean_over(double mean, double sd, double least);

}  // namespace tackfree
