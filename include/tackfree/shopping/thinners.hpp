// Thinners: what the coats are thinned and the tools cleaned with, bought apart from the coatings.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/shopping/tin_purchase.hpp"
#include "tackfree/shopping/tool_use.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// One liquid; all its uses in the job are bought together.
struct ThinnerPurchase : TinPurchase {
  std::string liquid;  ///< `mineral spirits`
  Volume to_thin;      ///< expected, in the thinned coats
  Volume to_clean;
  int sessions = 0;   ///< that it cleans the tools of
  int cleanings = 0;  ///< after each of these, and in pauses
};

/// `thinners` are what is at hand and what sizes there are. In the order of the coatings; one
/// liquid for both ends is one purchase. To thin, it must serve nine jobs in ten as the coating
/// does. Water is not bought.
std::vector<ThinnerPurchase> thinner_purchases(const Job& job, const std::vector<Thinner>& thinners,
                                               const JobVolumes& volumes,
                                               const std::vector<ToolUse>& uses);

}  // namespace tackfree
