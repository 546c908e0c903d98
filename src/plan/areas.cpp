#include "tackfree/plan/areas.hpp"

#include "tackfree/plan/part_notes.hpp"

namespace tackfree {

Areas areas_of(const Job& job) { return {job, take_off(job), part_notes(job)}; }

}  // namespace tackfree
