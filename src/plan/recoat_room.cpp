#include "tackfree/plan/recoat_room.hpp"

namespace tackfree {

std::vector<RecoatRoom> recoat_rooms(const Plan& plan) {
  return recoat_rooms(plan.job, plan.list, plan.air, plan.schedule);
}

}  // namespace tackfree
