#include "tackfree/plan/recoat_slack.hpp"

namespace tackfree {

std::vector<RecoatSlack> recoat_slacks(const Plan& plan) {
  return recoat_slacks(plan.job, plan.list, plan.air, plan.schedule);
}

}  // namespace tackfree
