// Tins words: what to buy of tins, in a line.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>

namespace tackfree {

/// All tins to buy in one line: `1 x 1 qt varnish; 1 x 1 pt mineral spirits`, or `nothing`.
std::string all_tins_text(const Plan& plan);

/// `2 x 1 qt + 1 x 1/2 pt`, or `nothing`.
std::string tins_text(const TinPurchase& purchase);

}  // namespace tackfree
