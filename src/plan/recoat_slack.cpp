#include "tackfree/plan/recoat_slack.hpp"

namespace tackfree {

std::vector<RecoatSlack> recoat_slacks(const DatedWork& work) {
  return recoat_slacks(work.job, work.list, work.air, work.schedule);
}

}  // namespace tackfree
