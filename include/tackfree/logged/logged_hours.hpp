// Logged hours: what the log says of somebody's hours, put into the calendars.
#pragma once

#include "tackfree/model/job.hpp"

#include <vector>

namespace tackfree {

/// Of the lines up to `now` the later ones count where they speak of the same hours. A line without
/// a person is for everybody; one that names nobody of the job does not count. Who is free may work
/// then, whatever the calendar and the busy files say.
void apply_logged_hours(Job& job, Instant now);

/// When by the lines up to `now` nobody of the job is there, joined and in order.
std::vector<Interval> logged_away(const Job& job, Instant now);

}  // namespace tackfree
