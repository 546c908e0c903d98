// Log sections: lines of the log, and what a report was understood as.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/evening/log_entry.hpp"

namespace tackfree {

/// What was understood and what comes of it.
void write_understood(Page& page, const UnderstoodReport& told);

/// Every line of the log that counts, with its number; and what was kept aside.
void write_log(Page& page, const Job& job);

}  // namespace tackfree
