#include "tackfree/plan/recoat_room.hpp"

namespace tackfree {

std::vector<RecoatRoom> recoat_rooms(const DatedWork& work) {
  return recoat_rooms(work.job, work.list, work.air, work.schedule);
}

}  // namespace tackfree
