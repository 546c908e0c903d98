// Wait words: what must not be done to which batch, until when and why, a line for each.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/evening/batch_waits.hpp"
#include "tackfree/words/step_words.hpp"

#include <vector>

namespace tackfree {

/// `Don't` what must wait, with hour and reason; `Try` where a coat should be dry for what is next.
/// Batches of which the same is to be said share a line; no batch has both.
void write_batch_waits(Page& page, const Plan& plan, const std::vector<BatchWait>& waits,
                       const StepWords& words);

}  // namespace tackfree
