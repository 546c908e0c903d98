// Left-over words: what is in a tin, since when it is open and until when it keeps.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>

namespace tackfree {

/// `650 ml, opened in April 2027, keeps until about April 2028`; of one that was bought and not
/// opened, `1 L, not opened`; where nobody knows, `1 L`; of one that is too old, `0.3 L, opened in
/// October 2025: past its time`.
std::string tin_left_text(const TinLeft& tin, const Figures& figures);

/// What is left of one coating, tin by tin: `likely 650 ml; in nine jobs out of ten at least 500
/// ml. ...`
std::string coating_left_text(const CoatingLeft& left, const Figures& figures);

/// `likely 0.4 L, clean. It does not spoil. Another 0.3 L is dirty from washing tools.`
std::string thinner_left_text(const ThinnerLeft& left, const Figures& figures);

}  // namespace tackfree
