// Open faults: what went wrong with a coat, by the log, and is not put right yet.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"

#include <string>
#include <vector>

namespace tackfree {

struct OpenFault {
  std::size_t coat = 0;  ///< index into OperationList::operations
  Fault fault = Fault::runs;
  std::string advice;  ///< of the finishing data; empty where it says nothing
};

/// In the order of the log, each once. A fault is open until its repair is done; a tacky coat is
/// open until it passes a thumb test, or until a later coat of its batch is on.
std::vector<OpenFault> open_faults(const Job& job, const OperationList& list);

}  // namespace tackfree
