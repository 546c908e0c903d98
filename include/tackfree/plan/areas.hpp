// Areas: what there is to coat, also of a job that cannot be dated.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <vector>

namespace tackfree {

struct Areas {
  Job job;
  SurfaceTakeoff takeoff;
  std::vector<Note> notes;  ///< on its parts
};

Areas areas_of(const Job& job);

}  // namespace tackfree
