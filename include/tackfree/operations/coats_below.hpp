// Coats below: what a coat still to come waits for of the coats it goes on, whatever lies between.
#pragma once

#include "tackfree/operations/operation_list.hpp"

namespace tackfree {

/// Adds to each coat that is not done the waits for the coats under it that no other work to come
/// keeps for it: until they may be recoated, together where they melt into one film (rule 4), for
/// as long as a pair of classes asks (rule 5), and for the next day where there are enough on one
/// (rule 4); and until the other side, on which the parts lie, can be handled. Work between two
/// coats keeps these until it is done: done too early or left out it has dried nothing, and a
/// repair may come between as well. `list` is marked with what is done.
void wait_for_coats_below(OperationList& list, const Job& job);

}  // namespace tackfree
