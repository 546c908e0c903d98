// Sundry words: what each thing to have at hand is called, how much of it to get and what for.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>

namespace tackfree {

/// One thing to have at hand as it is read.
struct SundryText {
  std::string what;   ///< `abrasive sheet or disc, P120`
  double amount = 0;  ///< in the sundry's unit; of tape up to whole metres, or feet in a US job
  std::string shown;  ///< `3`, `4 m`
  std::string why;    ///< `for 4.10 m²`
};

SundryText sundry_text(const Sundry& sundry, const Job& job, const Figures& figures);

}  // namespace tackfree
