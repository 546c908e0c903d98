// Text log: lines of the log, and what a report was understood as, for a terminal.
#pragma once

#include "tackfree/evening/log_entry.hpp"

#include <string>

namespace tackfree {

/// What was understood and what comes of it.
std::string understood_text(const UnderstoodReport& told, int columns = 80);

/// Every line of the log that counts, with its number; and what was kept aside.
std::string log_text(const Job& job, int columns = 80);

}  // namespace tackfree
