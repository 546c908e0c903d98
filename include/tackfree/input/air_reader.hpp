// Air reader: the air of the job: sources in order, the room that follows them, and the boards.
#pragma once

#include "tackfree/input/air_rows_reader.hpp"
#include "tackfree/input/json_cursor.hpp"
#include "tackfree/model/air.hpp"

#include <filesystem>

namespace tackfree {

/// The job's `air` object. Files are named relative to `folder`.
AirRecord read_air(JsonCursor& air, const std::filesystem::path& folder, const Zone& zone);

}  // namespace tackfree
