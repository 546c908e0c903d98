// Nine in ten: the factor on an expected need that suffices in nine jobs of ten.
#pragma once

namespace tackfree {

/// Factor on the expected need that suffices in nine jobs of ten, when a job factor of log-sd
/// `sigma` multiplies everything and a second one of log-sd `sigma_absorption` the share
/// `first_share` of the need that goes into bare wood. Both have mean 1. Closed form where one
/// factor rules, else Fenton-Wilkinson. Source: assumption of this project; the method is L. F.
/// Fenton, IRE Trans. Commun. Syst. 8 (1960) 57-67 (from memory).
double nine_in_ten_factor(double sigma, double sigma_absorption, double first_share);

}  // namespace tackfree
