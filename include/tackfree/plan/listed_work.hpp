// Listed work: the operations with what the log says of them.
#pragma once

#include "tackfree/plan/work_at_hand.hpp"

namespace tackfree {

/// The operations of the work, by what it sands for and holds to windows, in its air.
OperationList listed_work(const WorkAtHand& work);

}  // namespace tackfree
