// Air reader: the air of the job: sources in order, the room that follows them, and the boards.
#pragma once

#include "tackfree/input/air_rows_reader.hpp"
#include "tackfree/input/named_files.hpp"
#include "tackfree/model/air.hpp"
#include "tackfree/syntax/json_cursor.hpp"

namespace tackfree {

/// The job's `air` object. Files are found through `files`.
AirRecord read_air(JsonCursor& air, NamedFiles& files, const Zone& zone);

}  // namespace tackfree
