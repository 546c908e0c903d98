// Repairs: the work and the waits that put a coat right again after something went wrong with it.
#pragma once

#include "tackfree/operations/operation_list.hpp"

#include <cstddef>
#include <string>

namespace tackfree {

/// No plan holds so many operations, so no repair is added to them.
inline constexpr std::size_t most_listed = 1'250;

/// What the trade does about a fault of this coating, as the finishing data has it; empty where it
/// says nothing.
std::string repair_advice(const Job& job, const Coating& coating, Fault fault);

/// Adds the repair of every fault in the log after the coat it was seen on; what waits for that
/// coat waits for the repair too. Runs and wrinkles dry like a film twice as thick before they are
/// sanded, P320 on a tenth of the area and P220 on all of it; a run on a back that is coated over
/// is levelled when that is next sanded or coated, so turning does not wait for it; a coat with
/// fisheyes is washed off;
/// blush and spots sanded through are touched up, and a touched-up spot dries before the next coat.
/// Wrinkles and fisheyes cost the coat again, and so do runs and spots in a last coat. A tacky coat
/// has no work of its own: it counts as a thumb test that failed. A repair comes after what was
/// done to the batch before the fault was seen. What was sanded by then is sanded once more where
/// the coat is lost; under another coat nothing is repaired. Where a coat that is put on again is
/// among `keyed`, it comes too late to hold on what is below it, and that is sanded first, after
/// the repair. Source: practice; the shares of the area and the film assumed.
OperationList with_repairs(const OperationList& list, const Job& job, const KeyedCoats& keyed = {});

}  // namespace tackfree
