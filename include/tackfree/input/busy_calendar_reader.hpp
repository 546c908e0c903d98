// Busy calendar reader: the busy times in a calendar file that a person has exported.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/busy_event.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// More events than these, or more of them that repeat, are not read: in one file, and in all the
/// files of one person.
inline constexpr std::size_t most_busy_events = 20'000;
inline constexpr std::size_t most_busy_rules = 2'000;

/// The events of an iCalendar file (RFC 5545) that keep its owner busy: not the cancelled ones and
/// not those shown as free. Days and floating times are of the zone `home`. Moved and cancelled
/// instances of a repeating event replace the original ones. What cannot be read surely is a
/// Problem with its line under the `name` of the file: an unknown zone, a rule by the second, a
/// file that is too long.
std::vector<BusyEvent> busy_events(std::string_view text, const std::string& name, const Zone& home,
                                   Problems& problems);

}  // namespace tackfree
