// Logged hours: what the log says of somebody's hours, put into the calendars.
#pragma once

#include "tackfree/model/job.hpp"

namespace tackfree {

/// Of the lines up to `now` the later ones count where they speak of the same hours. A line without
/// a person is for everybody; one that names nobody of the job does not count. Who is free may work
/// then, whatever the calendar and the busy files say.
void apply_logged_hours(Job& job, Instant now);

}  // namespace tackfree
