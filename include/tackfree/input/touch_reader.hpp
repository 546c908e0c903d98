// Touch reader: what may be done after the last coat, and after which systems of a job.
#pragma once

#include "tackfree/input/figure_reader.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <vector>

namespace tackfree {

/// The entries of finishing_touches.json.
std::vector<FinishingTouch> read_touches(JsonCursor& file, const SourceNames& sources);

/// A touch for films after a coating that builds none is a Problem.
void check_touches(const Job& job, Problems& problems);

}  // namespace tackfree
