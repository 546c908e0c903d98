// Air reader: the air of a job: sources in order, such as daily lows and highs or typical months.
#pragma once

#include "tackfree/input/air_rows_reader.hpp"
#include "tackfree/input/named_files.hpp"
#include "tackfree/model/air.hpp"
#include "tackfree/syntax/json_cursor.hpp"

namespace tackfree {

/// The job's `air` object. Files are found through `files`.
AirRecord read_air(JsonCursor& air, NamedFiles& files, const Zone& zone);

/// `days` of a source: its `origin` and, under `each`, one object a day.
AirDays read_air_days(JsonCursor& object, const Zone& zone);

/// `months` of a source: its `origin` and, under `each`, one object a month.
AirMonths read_air_months(JsonCursor& object, const Zone& zone);

}  // namespace tackfree
