// Air days reader: daily lows and highs, and typical months, as a job lists them.
#pragma once

#include "tackfree/model/air.hpp"
#include "tackfree/syntax/json_cursor.hpp"

namespace tackfree {

/// `days` of a source: its `origin` and, under `each`, one object a day.
AirDays read_air_days(JsonCursor& object, const Zone& zone);

/// `months` of a source: its `origin` and, under `each`, one object a month.
AirMonths read_air_months(JsonCursor& object, const Zone& zone);

/// Local time less UTC without daylight saving: the smaller of that in January and in July.
Minutes standard_offset(const Zone& zone, int year);

}  // namespace tackfree
